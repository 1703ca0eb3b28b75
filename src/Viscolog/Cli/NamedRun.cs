using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Store;

namespace Viscolog.Cli;

/// <summary>A run that a command names.</summary>
/// <param name="Name">How messages name it.</param>
/// <param name="File">The run.</param>
/// <param name="Earlier">Earlier runs that tell something about it, the earliest first.</param>
/// <param name="Warnings">What the reader ought to know.</param>
internal sealed record NamedRun(string Name, RunFile File, ImmutableArray<Run> Earlier, ImmutableArray<string> Warnings)
{
    /// <summary>What the bench's log knows besides runs.</summary>
    public BenchKnowledge Bench { get; init; } = BenchKnowledge.None;

    /// <summary>The numbers of the file's rows in the log; empty for a file.</summary>
    public ImmutableArray<int> Rows { get; init; } = [];
}
