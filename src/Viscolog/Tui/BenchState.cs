using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;
using Viscolog.Store;

namespace Viscolog.Tui;

/// <summary>The bench screen's state; every event makes a new one.</summary>
/// <param name="Run">The run as the log has it.</param>
internal sealed record BenchState(LoggedRun Run)
{
    public BenchClock Clock { get; init; } = new();

    public BenchReadings Beside { get; init; } = BenchReadings.None;

    /// <summary>The last advice; null before the first.</summary>
    public BenchAdvice? Advice { get; init; }

    /// <summary>Number of the question that was asked last; an answer to an earlier one is out of date.</summary>
    public int Asked { get; init; }

    /// <summary>Whether the last question is still being worked on.</summary>
    public bool IsWorking { get; init; }

    public Percentage Risk { get; init; } = IncrementPolicy.DefaultRisk;

    /// <summary>The row that is chosen, by its place from 0; null for the last.</summary>
    public int? Chosen { get; init; }

    /// <summary>What is wrong with what was typed; null where nothing is.</summary>
    public string? Error { get; init; }

    /// <summary>What just happened.</summary>
    public string Said { get; init; } = "";

    /// <summary>Whether the entry fields are to be emptied.</summary>
    public int Entered { get; init; }

    public int ChosenPlace => Chosen ?? Run.Rows.Length - 1;
}
