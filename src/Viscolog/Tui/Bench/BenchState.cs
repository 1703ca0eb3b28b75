using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;

namespace Viscolog.Tui.Bench;

/// <summary>The bench screen's state; every event makes a new one.</summary>
/// <param name="Run">The run as the log has it.</param>
internal sealed record BenchState(LoggedRun Run)
{
    /// <summary>Runs of the same base that were done before; they help at its start.</summary>
    public ImmutableArray<Run> Earlier { get; init; } = [];

    public BenchClock Clock { get; init; } = new();

    /// <summary>What instruments say by themselves.</summary>
    public BenchNews Feeds { get; init; } = new();

    public BenchReadings Beside { get; init; } = BenchReadings.None;

    /// <summary>The last advice; null before the first.</summary>
    public BenchAdvice? Advice { get; init; }

    /// <summary>Whether the last question is still being worked on.</summary>
    public bool IsWorking { get; init; }

    public Percentage Risk { get; init; } = IncrementPolicy.DefaultRisk;

    /// <summary>The row that is chosen, by its place from 0; null for the last.</summary>
    public int? Chosen { get; init; }

    /// <summary>What is wrong with what was typed; null where nothing is.</summary>
    public string? Error { get; init; }

    /// <summary>A reading that was asked about, as typed; Enter on the same once more keeps it. Null where nothing is asked.</summary>
    public BenchEvent.Typed? Doubted { get; init; }

    /// <summary>Readings that were pasted and wait for Enter.</summary>
    public ImmutableArray<FileRow> Pasted { get; init; } = [];

    /// <summary>What can be taken back and said again.</summary>
    public ChangeHistory History { get; init; } = new([], []);

    /// <summary>Whether it was asked how long the pot has stood, the clock being ahead.</summary>
    public bool IsClockAsked { get; init; }

    /// <summary>What just happened.</summary>
    public string Said { get; init; } = "";

    /// <summary>Whether the entry fields are to be emptied.</summary>
    public int Entered { get; init; }

    public int ChosenPlace => Chosen ?? Run.Rows.Length - 1;
}

/// <summary>What was measured beside the next reading; kept until that is logged.</summary>
internal sealed record BenchReadings(double? TempC, double? Ph, double? StringMm, ObservedFault? Fault)
{
    public static BenchReadings None { get; } = new(null, null, null, null);

    public bool IsEmpty => this == None;

    /// <summary>These, and others where there are none.</summary>
    public BenchReadings Or(BenchReadings others)
        => new(TempC ?? others.TempC, Ph ?? others.Ph, StringMm ?? others.StringMm, Fault ?? others.Fault);

    public string Words => string.Join(", ", new[]
    {
        TempC is { } t ? string.Create(Numbers, $"{t:0.##} °C") : null,
        Ph is { } ph ? string.Create(Numbers, $"pH {ph:0.##}") : null,
        StringMm is { } mm ? Say($"string {mm:0.##} mm") : null,
        Fault is { } fault ? FaultWords.Of(fault) : null,
    }.OfType<string>());
}
