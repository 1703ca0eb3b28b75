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
        => Rows.Select(r => FileRow.Of(Run.Entries.AsSpan(r.FirstEntry, r.EntryCount)) with { Replaces = r.Replaces, Unknown = r.Unknown });

    /// <summary>A row with the name that its thickener has now.</summary>
    public FileRow Renamed(FileRow row) => row.Dosed is { } dosed && Run.NameNow(dosed.Thickener) is var name && name != dosed.Thickener
        ? row with { Dosed = new(name, dosed.Poured) }
        : row;

    /// <summary>The file with these rows instead of its own.</summary>
    public RunFile With(IEnumerable<FileRow> rows)
    {
        var entries = ImmutableArray.CreateBuilder<Entry>();
        var places = ImmutableArray.CreateBuilder<RunFileRow>();
        foreach (var row in rows)
        {
            var first = entries.Count;
            entries.AddRange(row.Entries());
            places.Add(new(first, entries.Count - first, row.Unknown, row.Replaces));
        }

        return this with { Run = Run with { Entries = entries.ToImmutable() }, Rows = places.ToImmutable() };
    }

    /// <summary>The run as a file, its entries gathered into as few rows as keep their order.</summary>
    public static RunFile FromRun(Run run)
    {
        var rows = ImmutableArray.CreateBuilder<RunFileRow>();
        var first = 0;
        for (var i = 1; i <= run.Entries.Length; i++)
        {
            if (i == run.Entries.Length || !FileRow.Joins(run.Entries[i - 1], run.Entries[i]))
            {
                rows.Add(new(first, i - first, []));
                first = i;
            }
        }

        return new(run) { Rows = rows.ToImmutable() };
    }
}

/// <summary>One row: the entries of the run that it made, and what stands in its unknown columns.</summary>
/// <param name="FirstEntry">The place of its first entry in the run, from 0.</param>
/// <param name="EntryCount">How many entries it made; 0 where only unknown columns are filled.</param>
/// <param name="Unknown">The texts of the unknown columns, in their order; empty where the file has none.</param>
/// <param name="Replaces">Whether it stands for the void row before it.</param>
internal sealed record RunFileRow(int FirstEntry, int EntryCount, ImmutableArray<string> Unknown, bool Replaces = false);

/// <summary>A header key that the format does not know; kept for the next export.</summary>
internal sealed record UnknownKey(string Key, string Value);

/// <summary>A <c>key=value</c> pair of a thickener line that the format does not know; kept for the next export.</summary>
internal sealed record UnknownTrait(string Thickener, string Key, string Value);
