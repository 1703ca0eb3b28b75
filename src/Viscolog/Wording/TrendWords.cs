using Viscolog.Core.Charting;
using Viscolog.Core.Checking;

namespace Viscolog.Wording;

/// <summary>A control chart in words, the same on the screen and in print.</summary>
internal static class TrendWords
{
    /// <summary>The limits and where they come from.</summary>
    public static string Limits(ControlChart chart, string unit)
    {
        var without = chart.LeftOut.IsEmpty ? "" : Say($", without {string.Join(", ", chart.LeftOut)}");
        var limits = Say($"{Shown.Limit(chart.Lower)} to {Shown.Limit(chart.Upper)}{Behind(unit)}, mean {Shown.Limit(chart.Mean)}");
        return chart.BaselineCount < chart.Points.Length
            ? Say($"{limits}, from the first {chart.BaselineCount} batches{without}")
            : Say($"{limits}, from all {chart.BaselineCount} batches{without}");
    }

    /// <summary>Whether there are fewer batches than the longest rule looks at, so that no broken rule says little.</summary>
    public static bool IsShort(ControlChart chart) => chart.Points.Length < ControlChart.LongestRule;

    /// <summary>The moving range and its limit.</summary>
    public static string Range(ControlChart chart, string unit) => chart.Scale == ChartScale.Log
        ? Say($"mean {100 * double.ExpM1(chart.MovingRangeMean):0.0} %, limit {100 * double.ExpM1(chart.MovingRangeUpper):0.0} %")
        : Say($"mean {Shown.Limit(chart.MovingRangeMean)}{Behind(unit)}, limit {Shown.Limit(chart.MovingRangeUpper)}{Behind(unit)}");

    /// <summary>The pattern that gives a signal.</summary>
    public static string Of(ChartRule rule) => rule switch
    {
        ChartRule.BeyondLimits => Say("one point beyond the limits"),
        ChartRule.TwoOfThree => Say("two of three points beyond two thirds of the way to a limit"),
        ChartRule.FourOfFive => Say("four of five points beyond one third of the way to a limit"),
        ChartRule.EightOnOneSide => Say("eight points in a row on one side of the mean"),
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "not a rule"),
    };

    /// <summary>Why values can't be charted, and what to do.</summary>
    public static string Of(ChartRefusal refusal) => refusal switch
    {
        ChartRefusal.TooFewBatches(0)
            => Say($"limits need {ControlChart.LeastBaseline} batches or more (20 give good ones), and there are none"),
        ChartRefusal.TooFewBatches(1)
            => Say($"limits need {ControlChart.LeastBaseline} batches or more (20 give good ones), and there is 1"),
        ChartRefusal.TooFewBatches(var there)
            => Say($"limits need {ControlChart.LeastBaseline} batches or more (20 give good ones), and there are {there}"),
        ChartRefusal.NoScatter => Say("all values of the baseline are the same, so there is no scatter to take limits from: read them to "
            + "more digits, or use a longer baseline"),
        ChartRefusal.NoLogarithm(var point) => Say($"batch {point.Batch} has the value {point.Value:0.###}, which has no logarithm: chart "
            + $"these values on the linear scale"),
        ChartRefusal.WantedNoLogarithm => Say("a limit of 0 or less has no logarithm: leave it out, or chart on the linear scale"),
        ChartRefusal.WantedTurned => Say("the low limit must be below the high one"),
        ChartRefusal.NoSuchBatch no => Say($"there is no batch '{no.Batch}' to leave out"),
        _ => throw new ArgumentOutOfRangeException(nameof(refusal), refusal, "not a case of the closed set"),
    };

    /// <summary>What a reader of a chart must know.</summary>
    public static string Of(ChartWarning warning) => warning switch
    {
        ChartWarning.FewBatches few
            => Say($"the limits come from {few.Count} batches; they are rough below {ControlChart.UsualBaseline}"),
        ChartWarning.BaselineBeyondLimits { Batches: [var one] } => Say($"batch {one} of the baseline is beyond the limits: if the cause "
            + $"is known, leave it out and recalculate the limits"),
        ChartWarning.BaselineBeyondLimits many => Say($"batches {string.Join(", ", many.Batches)} of the baseline are beyond the limits: "
            + $"if the cause is known, leave them out and recalculate the limits"),
        ChartWarning.BaselineSignals => Say("the baseline has signals: capability means little until they are explained"),
        ChartWarning.BatchTwice twice => Say($"batch '{twice.Batch}' is listed more than once; each row is its own point"),
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "not a case of the closed set"),
    };

    /// <summary>A batch that the chart leaves out.</summary>
    public static string LeftOut((string Name, ValueGap Gap) left) => Say($"left out: {left.Name}: {CheckRemarks.Of(left.Gap)}");

    /// <summary>The signals, a line each.</summary>
    public static IEnumerable<string> Signals(ControlChart chart)
        => chart.Signals.Select(s => s.IsHigh ? Say($"batch {s.Batch}, high: {Of(s.Rule)}") : Say($"batch {s.Batch}, low: {Of(s.Rule)}"))
            .Concat(chart.RangeSignals.Select(i => Say($"batch {chart.Points[i].Batch}: moving range above its limit")));

    /// <summary>What a signal is worth.</summary>
    public static string ByChance => Say($"{ControlChart.FalseSignals.Percent:0} of 100 charts of 30 batches give a signal by chance, with "
        + $"nothing wrong: look for a cause before you change anything.");

    /// <summary>An index with its interval.</summary>
    public static string Index(Capability index)
        => Say($"{index.Index:0.00} ({index.Low:0.00} to {index.High:0.00}, {Capability.Level.Percent:0} %)");

    private static string Behind(string unit) => unit.Length == 0 ? "" : " " + unit;
}
