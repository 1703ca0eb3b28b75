using Viscolog.Core.Charting;
using Viscolog.Wording;

namespace Viscolog.Cli.Json;

/// <summary>A control chart as <c>viscolog.trend/1</c>.</summary>
internal sealed record TrendAnswer() : Answer("viscolog.trend/1")
{
    public string? Name { get; init; }
    public required string Scale { get; init; }
    public string? Unit { get; init; }
    public required int Batches { get; init; }
    public required int Baseline { get; init; }
    public IReadOnlyList<string>? LeftOut { get; init; }
    public required double Mean { get; init; }
    public required double MovingRangeMean { get; init; }
    public required double Upper { get; init; }
    public required double Lower { get; init; }
    public required double MovingRangeUpper { get; init; }
    public required IReadOnlyList<TrendSignalAnswer> Signals { get; init; }
    public required IReadOnlyList<string> MovingRangeSignals { get; init; }
    public double? Cpk { get; init; }
    public IndexAnswer? CpkInterval { get; init; }
    public double? Ppk { get; init; }
    public IndexAnswer? PpkInterval { get; init; }
    public string? File { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }

    public static TrendAnswer Of(string? name, string unit, ControlChart chart, string? picture, IEnumerable<string> warnings) => new()
    {
        Name = name,
        Scale = chart.Scale == ChartScale.Log ? "log" : "linear",
        Unit = unit.Length == 0 ? null : unit,
        Batches = chart.Points.Length,
        Baseline = chart.InBaseline,
        LeftOut = chart.LeftOut.IsEmpty ? null : chart.LeftOut,
        Mean = Rounded.Six(chart.Mean),
        MovingRangeMean = Rounded.Six(chart.MovingRangeMean),
        Upper = Rounded.Six(chart.Upper),
        Lower = Rounded.Six(chart.Lower),
        MovingRangeUpper = Rounded.Six(chart.MovingRangeUpper),
        Signals = [.. chart.Signals.Select(s => new TrendSignalAnswer(s.Batch, TrendWords.Of(s.Rule), s.IsHigh ? "high" : "low"))],
        MovingRangeSignals = [.. chart.RangeSignals.Select(i => chart.Points[i].Batch)],
        Cpk = chart.Cpk is { } cpk ? Rounded.Six(cpk.Index) : null,
        CpkInterval = IndexAnswer.Of(chart.Cpk),
        Ppk = chart.Ppk is { } ppk ? Rounded.Six(ppk.Index) : null,
        PpkInterval = IndexAnswer.Of(chart.Ppk),
        File = picture,
        Warnings = [.. warnings, .. chart.Warnings.Select(TrendWords.Of)],
    };
}

/// <summary>A rule that a chart breaks, and on which side.</summary>
internal sealed record TrendSignalAnswer(string Batch, string Rule, string Side);

/// <summary>The interval of a capability index.</summary>
internal sealed record IndexAnswer(double Low, double High, double LevelPct)
{
    public static IndexAnswer? Of(Capability? index)
        => index is null ? null : new(Rounded.Four(index.Low), Rounded.Four(index.High), Capability.Level.Percent);
}
