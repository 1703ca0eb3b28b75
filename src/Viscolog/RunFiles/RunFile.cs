using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.RunFiles;

/// <summary>A run as a file holds it: the run, how its entries stand in rows, and what the format does not know.</summary>
internal sealed record RunFile(Run Run)
{
    /// <summary>The run's identity, the same on every machine; null where the file states none.</summary>
    public Guid? Id { get; init; }

    /// <summary>The rows in order; together they hold every entry once.</summary>
    public ImmutableArray<RunFileRow> Rows { get; init; } = [];

    /// <summary>The names of the columns that the format does not know, in order.</summary>
    public ImmutableArray<string> UnknownColumns { get; init; } = [];

    /// <summary>The header keys that the format does not know, in order.</summary>
    public ImmutableArray<UnknownKey> UnknownKeys { get; init; } = [];

    /// <summary>The pairs of thickener lines that the format does not know, in order.</summary>
    public ImmutableArray<UnknownTrait> UnknownTraits { get; init; } = [];

    /// <summary>A tolerance that stands in the file without a single target value to belong to.</summary>
    public Percentage? UnusedTolerance { get; init; }

    /// <summary>What the reader ought to know, a line each.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>Everything the header says: the file without its rows.</summary>
    public RunFile WithoutRows() => this with { Run = Run with { Entries = [] }, Rows = [], Warnings = [] };

    /// <summary>What each row says, in order.</summary>
    public IEnumerable<FileRow> Contents()
        => Rows.Select(r => new FileRow(RowContent.Of(Run.Entries.AsSpan(r.FirstEntry, r.EntryCount)) with { Replaces = r.Replaces }, r.Unknown));

    /// <summary>The file with these rows instead of its own.</summary>
    public RunFile With(IEnumerable<FileRow> rows)
    {
        var gathered = new RowBuilder();
        foreach (var row in rows)
        {
            gathered.Add(row);
        }

        return gathered.Onto(this);
    }

    /// <summary>The run as a file, its entries gathered into as few rows as keep their order.</summary>
    public static RunFile FromRun(Run run) => new(run) { Rows = RowGrouping.Of(run.Entries) };
}
