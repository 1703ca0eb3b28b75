using System.Globalization;
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

    /// <summary>The signals, a line each.</summary>
    public static IEnumerable<string> Signals(ControlChart chart)
        => chart.Signals.Select(s => $"batch {s.Batch}, {(s.IsHigh ? "high" : "low")}: {s.Words}")
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
