using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Charting;

/// <summary>
/// An individuals and moving-range chart (ISO 7870-2): mean ± 3·(mean moving range)/d2, and D4·(mean moving range) for the range of
/// neighbours. On the log scale
/// all of it is worked out on ln of the values, and levels are brought back to the values' unit; moving ranges stay in ln.
/// </summary>
public sealed record ControlChart
{
    /// <summary>Values that limits are taken from where nothing else is asked for (common practice: 20 to 25).</summary>
    public const int UsualBaseline = 20;

    /// <summary>How many points the longest rule looks at: with fewer, that no rule is broken says little.</summary>
    public const int LongestRule = 8;

    /// <summary>Fewer values tell no scatter.</summary>
    public const int LeastBaseline = 3;

    /// <summary>
    /// The share of charts that give a signal, by a rule or by a moving range, though nothing happened: 30 batches in control, limits from
    /// the first 20 (simulated; a test holds it).
    /// </summary>
    public static Percentage FalseSignals { get; } = Percentage.FromPercent(38);

    private ControlChart(ChartRequest request, ImmutableArray<double> scaled, ImmutableArray<double> baseline)
    {
        (Points, Scale, BaselineCount, LeftOut) =
            (request.Points, request.Scale, request.Baseline ?? Math.Min(UsualBaseline, scaled.Length), request.LeftOut);
        (Low, High, InBaseline) = (request.Low, request.High, baseline.Length);
        var mean = baseline.Average();
        MovingRangeMean = Ranges(baseline).Average()!.Value;
        Sigma = MovingRangeMean / ShewhartConstants.D2;
        (Mean, Lower, Upper) = (Back(mean), Back(mean - (ShewhartConstants.Limit * Sigma)), Back(mean + (ShewhartConstants.Limit * Sigma)));
        MovingRanges = [.. Ranges(scaled)];
        Away = [.. scaled.Select(v => (v - mean) / Sigma)];
        Signals = [.. ChartRules.Of(Points, Away)];
        RangeSignals = [.. Enumerable.Range(0, Points.Length).Where(i => MovingRanges[i] > MovingRangeUpper)];
        Cpk = Capability.Of(mean, Sigma, InBaseline, 1 / (2 * ShewhartConstants.RelativeVariance(InBaseline)), Scaled(Low), Scaled(High));
        var deviation = Math.Sqrt(baseline.Sum(v => (v - mean) * (v - mean)) / (InBaseline - 1));
        Ppk = Capability.Of(mean, deviation, InBaseline, InBaseline - 1, Scaled(Low), Scaled(High));
        Warnings = [.. Warned()];
    }

    /// <summary>The points, in order.</summary>
    public ImmutableArray<ChartPoint> Points { get; }

    /// <summary>The scale.</summary>
    public ChartScale Scale { get; }

    /// <summary>How many of the first points the baseline spans.</summary>
    public int BaselineCount { get; }

    /// <summary>Batches of it that the limits leave out.</summary>
    public ImmutableArray<string> LeftOut { get; }

    /// <summary>Values that the limits rest on.</summary>
    public int InBaseline { get; }

    /// <summary>The centre, in the values' unit (on the log scale the geometric mean).</summary>
    public double Mean { get; }

    /// <summary>Lower limit, in the values' unit.</summary>
    public double Lower { get; }

    /// <summary>Upper limit, in the values' unit.</summary>
    public double Upper { get; }

    /// <summary>Mean moving range; on the log scale in ln.</summary>
    public double MovingRangeMean { get; }

    /// <summary>Upper limit of a moving range; on the log scale in ln. The lower one is 0.</summary>
    public double MovingRangeUpper => ShewhartConstants.D4 * MovingRangeMean;

    /// <summary>Standard deviation from the mean moving range; on the log scale in ln.</summary>
    public double Sigma { get; }

    /// <summary>For each point the range to the one before it; null for the first. On the log scale in ln.</summary>
    public ImmutableArray<double?> MovingRanges { get; }

    /// <summary>For each point how far it lies from the mean, in standard deviations.</summary>
    public ImmutableArray<double> Away { get; }

    /// <summary>Signals of the four rules.</summary>
    public ImmutableArray<ChartSignal> Signals { get; }

    /// <summary>Places of points whose moving range is above its limit.</summary>
    public ImmutableArray<int> RangeSignals { get; }

    /// <summary>The least value wanted; null for none.</summary>
    public double? Low { get; }

    /// <summary>The greatest value wanted; null for none.</summary>
    public double? High { get; }

    /// <summary>Capability within the baseline, by the moving range; null where no limit is wanted.</summary>
    public Capability? Cpk { get; }

    /// <summary>Performance over the baseline, by the standard deviation of all its values (ISO 22514-1 calls it so); null where no limit
    /// is wanted.</summary>
    public Capability? Ppk { get; }

    /// <summary>What a reader must know.</summary>
    public ImmutableArray<ChartWarning> Warnings { get; }

    /// <summary>Charts values.</summary>
    /// <param name="request">What is asked.</param>
    public static ChartOutcome Of(ChartRequest request)
    {
        if (Obstacle(request) is { } reason)
        {
            return new ChartOutcome.Refused(reason);
        }

        ImmutableArray<double> scaled = [.. request.Points.Select(p => request.Scale == ChartScale.Log ? Math.Log(p.Value) : p.Value)];
        ImmutableArray<double> baseline = [.. scaled.Take(request.Baseline ?? UsualBaseline)
            .Where((_, i) => !request.LeftOut.Contains(request.Points[i].Batch, StringComparer.Ordinal))];
        if (baseline.Length < LeastBaseline)
        {
            return new ChartOutcome.Refused(new ChartRefusal.TooFewBatches(baseline.Length));
        }

        return Ranges(baseline).Average() > 1e-12 * Math.Max(1, baseline.Max(Math.Abs))
            ? new ChartOutcome.Charted(new(request, scaled, baseline))
            : new ChartOutcome.Refused(new ChartRefusal.NoScatter());
    }

    /// <summary>A level so many standard deviations from the mean, in the values' unit.</summary>
    /// <param name="deviations">Above 0 above the mean.</param>
    public double Level(double deviations) => Back((Scaled(Mean) ?? 0) + (deviations * Sigma));

    private static ChartRefusal? Obstacle(ChartRequest request)
    {
        if (request.Scale == ChartScale.Log && request.Points.FirstOrDefault(p => p.Value <= 0) is { } low)
        {
            return new ChartRefusal.NoLogarithm(low);
        }

        if (request.Scale == ChartScale.Log && (request.Low <= 0 || request.High <= 0))
        {
            return new ChartRefusal.WantedNoLogarithm();
        }

        if (request.Low >= request.High)
        {
            return new ChartRefusal.WantedTurned();
        }

        var unknown = request.LeftOut.FirstOrDefault(b => !request.Points.Any(p => p.Batch == b));
        return unknown is null ? null : new ChartRefusal.NoSuchBatch(unknown);
    }

    private static IEnumerable<double?> Ranges(IReadOnlyList<double> values)
    {
        for (var i = 0; i < values.Count; i++)
        {
            yield return i == 0 ? null : Math.Abs(values[i] - values[i - 1]);
        }
    }

    private double? Scaled(double? value) => value is { } v ? (Scale == ChartScale.Log ? Math.Log(v) : v) : null;

    private double Back(double scaled) => Scale == ChartScale.Log ? Math.Exp(scaled) : scaled;

    private IEnumerable<ChartWarning> Warned()
    {
        if (InBaseline < UsualBaseline)
        {
            yield return new ChartWarning.FewBatches(InBaseline);
        }

        ImmutableArray<string> outside = [.. Signals.Where(s => s.Rule == ChartRule.BeyondLimits && s.Place < BaselineCount
            && !LeftOut.Contains(s.Batch, StringComparer.Ordinal)).Select(s => s.Batch)];
        if (outside.Length > 0)
        {
            yield return new ChartWarning.BaselineBeyondLimits(outside);
        }

        if (Cpk is not null && Signals.Any(s => s.Place < BaselineCount))
        {
            yield return new ChartWarning.BaselineSignals();
        }

        if (Points.GroupBy(p => p.Batch, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
        {
            yield return new ChartWarning.BatchTwice(twice.Key);
        }
    }
}

/// <summary>Whether values could be charted. The set of cases is closed.</summary>
public abstract record ChartOutcome
{
    private protected ChartOutcome()
    {
    }

    /// <summary>They could.</summary>
    /// <param name="Chart">The chart.</param>
    public sealed record Charted(ControlChart Chart) : ChartOutcome;

    /// <summary>They could not.</summary>
    /// <param name="Reason">Why.</param>
    public sealed record Refused(ChartRefusal Reason) : ChartOutcome;
}

/// <summary>One batch's value on a control chart.</summary>
/// <param name="Batch">The batch, as it was named.</param>
/// <param name="Value">Its value, in the chart's unit; finite.</param>
public sealed record ChartPoint(string Batch, double Value);

/// <summary>What is asked of a control chart.</summary>
/// <param name="Points">The batches' values in the order in which they were made.</param>
/// <param name="Scale">The scale.</param>
public sealed record ChartRequest(ImmutableArray<ChartPoint> Points, ChartScale Scale)
{
    /// <summary>The limits come from so many of the first points; null for the usual number.</summary>
    public int? Baseline { get; init; }

    /// <summary>Batches of the baseline whose cause was found and which the limits leave out; they stay on the chart.</summary>
    public ImmutableArray<string> LeftOut { get; init; } = [];

    /// <summary>The least value wanted, in the chart's unit; null for none.</summary>
    public double? Low { get; init; }

    /// <summary>The greatest value wanted; null for none.</summary>
    public double? High { get; init; }
}

/// <summary>On which scale a control chart is worked out.</summary>
public enum ChartScale
{
    /// <summary>The values as they are.</summary>
    Linear,

    /// <summary>Their natural logarithms: for viscosities and times, which scatter by per cent.</summary>
    Log,
}
