using Viscolog.Output;

namespace Viscolog.Store;

/// <summary>Writes a journal again from a query copy that is whole, for when the journal itself was damaged.</summary>
internal static class JournalFromCopy
{
    /// <summary>Writes it.</summary>
    /// <param name="disk">The disk it goes to.</param>
    /// <param name="copy">The query copy.</param>
    /// <param name="path">Where to; what is there is written over.</param>
    /// <param name="at">The time, for what the copy does not know the time of.</param>
    /// <param name="progress">Told from time to time.</param>
    public static void Write(Disk disk, QueryCopy copy, string path, string at, IProgress<LogProgress>? progress)
    {
        var begun = new LogRecord.Begun(LogOpening.JournalVersion, Guid.CreateVersion7()) { At = at };
        WholeFile.Write(disk, path, JournalWriter.FirstLine(begun), replace: true);
        using var journal = new JournalWriter(disk, path, LogOpening.Scan(path, 0, null));
        var total = copy.RunCount();
        foreach (var run in copy.Runs().OrderBy(r => r.Id))
        {
            progress?.Report(new("writing the journal", run.Id, total));
            var records = Records(run, copy.RowsOf(run.Id).OrderBy(r => r.Id)).ToList();
            journal.Append(records, records.Count, run.Last, CancellationToken.None);
        }

        foreach (var material in copy.Materials())
        {
            journal.Append([new LogRecord.MaterialStated(new(material.Kind, material.Name, new(material.Cells, StringComparer.Ordinal)))], 1, material.Last, CancellationToken.None);
        }

        foreach (var oil in copy.Oils())
        {
            LogRecord[] records = [new LogRecord.OilRead(oil.Id, new(oil.Cells, StringComparer.Ordinal)), .. oil.Voided is { } reason ? new[] { new LogRecord.OilVoided(oil.Id, reason) } : []];
            journal.Append(records, records.Length, oil.Last, CancellationToken.None);
        }
    }

    private static IEnumerable<LogRecord> Records(RunDoc run, IEnumerable<RowDoc> rows)
    {
        var id = Guid.Parse(run.Uuid);
        var columns = run.Columns.Length == 0 ? null : run.Columns;
        foreach (var header in run.Earlier.Select(h => h.Split('\n')).Append(run.Header))
        {
            yield return new LogRecord.RunStated(run.Id, id, header, columns);
        }

        foreach (var row in rows)
        {
            yield return new LogRecord.RowAdded(run.Id, row.Number(), row.Is, row.After);
            if (row.Voided is { } reason)
            {
                yield return new LogRecord.RowVoided(run.Id, row.Number(), reason);
            }
        }
    }
}
