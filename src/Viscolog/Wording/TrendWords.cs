using System.Globalization;
using Viscolog.Core.Charting;
using Viscolog.Core.Checking;

namespace Viscolog.Wording;

/// <summary>A control chart in words, the same on the screen and in print.</summary>
internal static class TrendWords
{
    /// <summary>The limits and where they come from.</summary>
    public static string Limits(ControlChart chart, string unit)
    {
        var without = chart.LeftOut.IsEmpty ? "" : $", without {string.Join(", ", chart.LeftOut)}";
        return $"{Shown.Limit(chart.Lower)} to {Shown.Limit(chart.Upper)}{Spaced(unit)}, mean {Shown.Limit(chart.Mean)}, from "
            + $"{(chart.BaselineCount < chart.Points.Length ? $"the first {chart.BaselineCount}" : $"all {chart.BaselineCount}")} "
            + $"batches{without}";
    }

    /// <summary>The moving range and its limit.</summary>
    public static string Range(ControlChart chart, string unit) => chart.Scale == ChartScale.Log
        ? string.Create(CultureInfo.InvariantCulture, $"mean {100 * double.ExpM1(chart.MovingRangeMean):0.0} %, limit "
            + $"{100 * double.ExpM1(chart.MovingRangeUpper):0.0} %")
        : $"mean {Shown.Limit(chart.MovingRangeMean)}{Spaced(unit)}, limit {Shown.Limit(chart.MovingRangeUpper)}{Spaced(unit)}";

    /// <summary>The pattern that gives a signal.</summary>
    public static string Of(ChartRule rule) => rule switch
    {
        ChartRule.BeyondLimits => "one point beyond the limits",
        ChartRule.TwoOfThree => "two of three points beyond two thirds of the way to a limit",
        ChartRule.FourOfFive => "four of five points beyond one third of the way to a limit",
        ChartRule.EightOnOneSide => "eight points in a row on one side of the mean",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "not a rule"),
    };

    /// <summary>Why values can't be charted, and what to do.</summary>
    public static string Of(ChartRefusal refusal) => refusal switch
    {
        ChartRefusal.TooFewBatches(var there) => string.Create(CultureInfo.InvariantCulture, $"limits need {ControlChart.LeastBaseline} "
            + $"batches or more (20 give good ones), and there {(there == 1 ? "is" : "are")} {(there == 0 ? "none" : there)}"),
        ChartRefusal.NoScatter => "all values of the baseline are the same, so there is no scatter to take limits from: read them to "
            + "more digits, or use a longer baseline",
        ChartRefusal.NoLogarithm(var point) => string.Create(CultureInfo.InvariantCulture, $"batch {point.Batch} has the value "
            + $"{point.Value:0.###}, which has no logarithm: chart these values on the linear scale"),
        ChartRefusal.WantedNoLogarithm => "a limit of 0 or less has no logarithm: leave it out, or chart on the linear scale",
        ChartRefusal.WantedTurned => "the low limit must be below the high one",
        ChartRefusal.NoSuchBatch no => $"there is no batch '{no.Batch}' to leave out",
        _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "not a case of the closed set"),
    };

    /// <summary>What a reader of a chart must know.</summary>
    public static string Of(ChartWarning warning) => warning switch
    {
        ChartWarning.FewBatches few => string.Create(CultureInfo.InvariantCulture, $"the limits come from {few.Count} batches; they are "
            + $"rough below {ControlChart.UsualBaseline}"),
        ChartWarning.BaselineBeyondLimits { Batches: [var one] } => $"batch {one} of the baseline is beyond the limits: if the cause "
            + "is known, leave it out and recalculate the limits",
        ChartWarning.BaselineBeyondLimits many => $"batches {string.Join(", ", many.Batches)} of the baseline are beyond the limits: "
            + "if the cause is known, leave them out and recalculate the limits",
        ChartWarning.BaselineSignals => "the baseline has signals: capability means little until they are explained",
        ChartWarning.BatchTwice twice => $"batch '{twice.Batch}' is listed more than once; each row is its own point",
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "not a case of the closed set"),
    };

    /// <summary>A batch that the chart leaves out.</summary>
    public static string LeftOut((string Name, ValueGap Gap) left) => $"left out: {left.Name}: {CheckRemarks.Of(left.Gap)}";

    /// <summary>The signals, a line each.</summary>
    public static IEnumerable<string> Signals(ControlChart chart)
        => chart.Signals.Select(s => $"batch {s.Batch}, {(s.IsHigh ? "high" : "low")}: {Of(s.Rule)}")
            .Concat(chart.RangeSignals.Select(i => $"batch {chart.Points[i].Batch}: moving range above its limit"));

    /// <summary>What a signal is worth.</summary>
    public static string ByChance { get; } = string.Create(CultureInfo.InvariantCulture,
        $"{ControlChart.FalseSignals.Percent:0} of 100 charts of 30 batches give a signal by chance, with nothing wrong: look for a cause "
            + $"before you change anything.");

    /// <summary>An index with its interval.</summary>
    public static string Index(Capability index)
        => FormattableString.Invariant($"{index.Index:0.00} ({index.Low:0.00} to {index.High:0.00}, {Capability.Level.Percent:0} %)");

    private static string Spaced(string unit) => unit.Length == 0 ? "" : " " + unit;
}
