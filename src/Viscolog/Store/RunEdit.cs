using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>A change of a run's rows. The set of cases is closed.</summary>
internal abstract record RunEdit
{
    private RunEdit()
    {
    }

    /// <summary>The records that changes of a run make, in their order; or why the run would then make no sense.</summary>
    /// <param name="logged">The run as the log has it.</param>
    /// <param name="edits">The changes.</param>
    public static (LogRecord[] Records, string? Fault) Records(LoggedRun logged, IReadOnlyList<RunEdit> edits)
    {
        var rows = logged.Rows.Zip(logged.File.Contents(), (n, r) => (Number: n, Row: r)).ToList();
        var (records, next) = (new List<LogRecord>(), logged.Rows.Length + 1);
        foreach (var edit in edits)
        {
            if (edit.Apply(rows, logged.Number, next, records) is { } fault)
            {
                return ([], fault);
            }

            next += edit is Add ? 1 : 0;
        }

        return ([.. records], RowAppender.Fault(logged.File.Run, rows.Select(r => r.Row)));
    }

    private protected abstract string? Apply(List<(int Number, FileRow Row)> rows, int run, int next, List<LogRecord> records);

    private static int PlaceOf(List<(int Number, FileRow Row)> rows, int row)
        => rows.FindIndex(r => r.Number == row) is >= 0 and var place
            ? place
            : throw new ArgumentOutOfRangeException(nameof(row), row, "the run has no such row");

    /// <summary>A row is added.</summary>
    /// <param name="Row">What it says.</param>
    /// <param name="After">The number of the row that it follows; null for the last.</param>
    internal sealed record Add(FileRow Row, int? After = null) : RunEdit
    {
        private protected override string? Apply(List<(int Number, FileRow Row)> rows, int run, int next, List<LogRecord> records)
        {
            rows.Insert(After is { } before ? PlaceOf(rows, before) + 1 : rows.Count, (next, Row));
            records.Add(new LogRecord.RowAdded(run, next, Row, After));
            return null;
        }
    }

    /// <summary>A row counts no more; it stays in sight.</summary>
    internal sealed record Void(int Row, string Reason) : RunEdit
    {
        private protected override string? Apply(List<(int Number, FileRow Row)> rows, int run, int next, List<LogRecord> records)
        {
            var place = PlaceOf(rows, Row);
            if (rows[place].Row.Void is { } earlier)
            {
                return $"that row is void already: {earlier}";
            }

            rows[place] = (Row, rows[place].Row with { Void = Reason });
            records.Add(new LogRecord.RowVoided(run, Row, Reason));
            return null;
        }
    }

    /// <summary>A void row counts again.</summary>
    internal sealed record Lift(int Row) : RunEdit
    {
        private protected override string? Apply(List<(int Number, FileRow Row)> rows, int run, int next, List<LogRecord> records)
        {
            var place = PlaceOf(rows, Row);
            if (rows[place].Row.Void is null)
            {
                return "that row is not void";
            }

            rows[place] = (Row, rows[place].Row with { Void = null });
            records.Add(new LogRecord.VoidLifted(run, Row));
            return null;
        }
    }
}
