using System.Collections.Immutable;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>Turns earlier runs with the same base and thickener into a prior.</summary>
internal static class History
{
    /// <summary>
    /// Earlier runs taken into account at most; the latest given count, so that a long log costs no more than a short one.
    /// </summary>
    private const int Most = 8;

    /// <summary>Makes the prior.</summary>
    public static Prior For(Run run, Thickener thickener, ImmutableArray<Run> earlier)
    {
        var alike = earlier
            .Reverse()
            .Where(r => r.Base.Name is not null && r.Base.Name == run.Base.Name && ShearConditions.Agree(r, run))
            .Select(r => r.FindThickener(thickener.Name) is { } same && Evidence.Of(r, same) is EvidenceOutcome.Usable usable
                ? usable.Evidence
                : null)
            .OfType<Evidence>()
            .Where(e => e.Steps.Count(s => s.Readings.Length > 0) >= 2)
            .Take(Most)
            .ToArray();
        var runs = new EarlierRun[alike.Length];
        Parallel.For(0, alike.Length, i => runs[i] = EarlierRun.Of(alike[i], thickener.UsualRange));
        return Prior.After(runs);
    }
}

/// <summary>What an earlier run says of the curve, on the dose scale of the thickener in the run at hand.</summary>
/// <param name="ShapeWeights">The weight of each shape.</param>
/// <param name="Moments">The moments of each shape's parameters; null where it has next to no weight.</param>
/// <param name="Base">Mean and variance of the ln body of the base without thickener.</param>
/// <param name="ReadUpTo">The greatest dose in % that was read.</param>
internal sealed record EarlierRun(
    ImmutableArray<double> ShapeWeights, ImmutableArray<ShapeMoments?> Moments, (double Mean, double Variance) Base, double ReadUpTo)
{
    /// <summary>Summarizes a run.</summary>
    /// <param name="evidence">The run's evidence.</param>
    /// <param name="range">The usual range in force.</param>
    public static EarlierRun Of(Evidence evidence, DoseRange range)
    {
        var sampled = new SampledCurves(evidence, range.Top.Percent, Prior.Common, null, SamplingEffort.Moments);
        var levels = sampled.Draws.Select(d => d.Level(0)).ToArray();
        var mean = levels.Average(l => l.Mean);
        return new(
            sampled.ShapeWeights, sampled.Moments(), (
                mean, levels.Average(l => l.Variance + ((l.Mean - mean) * (l.Mean - mean)))), evidence.ReadUpTo);
    }
}
