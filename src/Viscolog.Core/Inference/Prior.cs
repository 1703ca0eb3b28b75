using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>
/// What is known of a pot's curve before its own readings: for each shape a mixture over the numbers of a row.
/// </summary>
public sealed class Prior
{
    private Prior(ImmutableArray<Mixture> mixtures, double levelMean, double levelSd, int runs, double readUpTo)
        => (Mixtures, LevelMean, LevelSd, Runs, ReadUpTo) = (mixtures, levelMean, levelSd, runs, readUpTo);

    /// <summary>The prior of a pot of which nothing is known.</summary>
    public static Prior Common { get; } = Of([.. Shapes.All.Select(s => new Mixture([Generic(s, 1)]))]);

    /// <summary>How many earlier runs stand behind it.</summary>
    public int Runs { get; }

    /// <summary>The greatest dose in % that an earlier run has read; 0 without any.</summary>
    internal double ReadUpTo { get; }

    /// <summary>A mixture for each of <see cref="Shapes.All"/>.</summary>
    internal ImmutableArray<Mixture> Mixtures { get; }

    /// <summary>Mean of ln(body of the base in mPa·s).</summary>
    internal double LevelMean { get; }

    /// <summary>Standard deviation of that.</summary>
    internal double LevelSd { get; }

    /// <summary>The prior of a pot without earlier runs over a mixture for each of <see cref="Shapes.All"/>.</summary>
    internal static Prior Of(ImmutableArray<Mixture> mixtures)
        => new(mixtures, Math.Log(PosteriorSettings.BaseMedian), PosteriorSettings.BaseLogSd, 0, 0);

    /// <summary>
    /// The prior after earlier runs with the same base and thickener: the new pot is like one of them, give or take the difference between
    /// lots, or dosed with something unlike all of them with a small chance that its own readings can raise.
    /// </summary>
    /// <param name="earlier">The earlier runs, each from the common prior and on the same thickener range.</param>
    internal static Prior After(IReadOnlyList<EarlierRun> earlier)
    {
        if (earlier.Count == 0)
        {
            return Common;
        }

        var pooled = HistoryPool.Of(earlier);
        var mixtures = Shapes.All.Select((shape, s) => new Mixture([Generic(shape, HistorySettings.UnlikeThickener), .. pooled[s]]));
        var mean = earlier.Average(r => r.Base.Mean);
        var variance = earlier.Average(r => r.Base.Variance + ((r.Base.Mean - mean) * (r.Base.Mean - mean)));
        var sd = Math.Sqrt(variance + (HistorySettings.LotLevelSd * HistorySettings.LotLevelSd));
        return new([.. mixtures], mean, sd, earlier.Count, earlier.Max(r => r.ReadUpTo));
    }

    /// <summary>Whether the unthickened base reads far from what the prior expects.</summary>
    internal bool IsFarFrom(Evidence evidence)
    {
        var first = evidence.Steps[0];
        return first is { Dose: <= 0, Readings.Length: > 0 }
            && Math.Abs(first.Readings.Average(r => r.Ln) - LevelMean) > HistorySettings.FarLevel * LevelSd;
    }

    /// <summary>The common prior of one shape, which has so much weight over all shapes.</summary>
    internal static GaussianComponent Generic(Shape shape, double weight)
    {
        var mean = CurveParameters.Row(
            shape.Parameters.Select(p => Math.Log(p.Median)), 0, Math.Log(shape.DiscrepancyMedian));
        var sd = CurveParameters.Row(shape.Parameters.Select(p => p.LogSd), 1, shape.DiscrepancyLogSd);
        var share = weight * shape.PriorWeight / Shapes.All.Sum(s => s.PriorWeight);
        return GaussianComponent.Independent(share, mean, sd);
    }
}
