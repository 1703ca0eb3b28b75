using Viscolog.RunFiles;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>Records of rows that are added and made void; what the rows say is compressed, since a run may go on for long.</summary>
/// <param name="run">The run's number.</param>
internal sealed class RowChanges(int run)
{
    private readonly List<(int Row, int? After, string? Void)> _changes = [];
    private readonly PackedRows _rows = new();

    /// <summary>Rows that are added.</summary>
    public int Added => _rows.Count;

    /// <summary>Rows that are made void.</summary>
    public int Voided => _changes.Count - Added;

    /// <summary>Adds a row.</summary>
    /// <param name="row">Its number.</param>
    /// <param name="content">What it says.</param>
    /// <param name="after">The number of the row that it follows; null for the last.</param>
    public void Add(int row, FileRow content, int? after)
    {
        _changes.Add((row, after, null));
        _rows.Add(RowJson.Bytes(content));
    }

    /// <summary>Makes a row void.</summary>
    public void Void(int row, string reason) => _changes.Add((row, null, reason));

    /// <summary>The records, made while they are gone through.</summary>
    public IEnumerable<LogRecord> Records()
    {
        using var texts = _rows.Texts().GetEnumerator();
        foreach (var (row, after, reason) in _changes)
        {
            if (reason is not null)
            {
                yield return new LogRecord.RowVoided(run, row, reason);
            }
            else
            {
                texts.MoveNext();
                yield return LogRecord.RowAdded.Of(run, row, texts.Current, after);
            }
        }
    }
}
