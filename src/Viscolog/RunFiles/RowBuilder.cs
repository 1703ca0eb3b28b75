using System.Collections.Immutable;
using Viscolog.Core.Pots;

namespace Viscolog.RunFiles;

/// <summary>Puts rows one after the other into a file.</summary>
internal sealed class RowBuilder
{
    private readonly ImmutableArray<Entry>.Builder _entries = ImmutableArray.CreateBuilder<Entry>();
    private readonly ImmutableArray<RunFileRow>.Builder _rows = ImmutableArray.CreateBuilder<RunFileRow>();

    /// <summary>Adds a row; says how many entries it made.</summary>
    public int Add(FileRow row)
    {
        var first = _entries.Count;
        _entries.AddRange(row.Content.Entries());
        _rows.Add(new(first, _entries.Count - first, row.Unknown, row.Content.Replaces));
        return _entries.Count - first;
    }

    /// <summary>The file with the rows added so far instead of its own.</summary>
    public RunFile Onto(RunFile file) => file with { Run = file.Run with { Entries = _entries.ToImmutable() }, Rows = _rows.ToImmutable() };
}
