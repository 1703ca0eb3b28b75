using Viscolog.RunFiles;

namespace Viscolog.Store;

/// <summary>What the journal gets so that the log says what a file says.</summary>
internal sealed class MergePlan
{
    private MergePlan()
    {
    }

    /// <summary>The run's number.</summary>
    public int Run { get; private init; }

    /// <summary>Whether the run is new to the log.</summary>
    public bool IsNew { get; private init; }

    /// <summary>Rows that are new.</summary>
    public int Added { get; private init; }

    /// <summary>Rows that become void.</summary>
    public int Voided { get; private init; }

    /// <summary>Rows that the log has already.</summary>
    public int Already { get; private init; }

    /// <summary>What the file and the log can't both be right about; null where there is nothing.</summary>
    public string? Contradiction { get; private init; }

    /// <summary>What to log; made while it is gone through, since a file may be long.</summary>
    public IEnumerable<LogRecord> Records { get; private init; } = [];

    /// <summary>How many records that is.</summary>
    public int RecordCount { get; private init; }

    /// <summary>The record of a run's header.</summary>
    public static LogRecord.RunStated Stated(int run, Guid id, RunFile file)
        => new(run, id, [.. HeaderText.Of(file with { Id = null })], file.UnknownColumns.IsEmpty ? null : [.. file.UnknownColumns]);

    /// <summary>The plan for a file.</summary>
    public static MergePlan Of(RunFile file, RunMatch match, int nextNumber)
        => match.Known is { } known ? Continued(file, known, match.Headers!) : New(file, match.NewId, nextNumber);

    private static MergePlan New(RunFile file, Guid id, int number) => new()
    {
        Run = number,
        IsNew = true,
        Added = file.Rows.Length,
        RecordCount = 1 + file.Rows.Length,
        Records = file.Contents().Select(LogRecord (row, i) => new LogRecord.RowAdded(number, i + 1, row)).Prepend(Stated(number, id, file)),
    };

    private static MergePlan Continued(RunFile file, LoggedRun known, IReadOnlyList<string> headers)
    {
        var name = FormattableString.Invariant($"run {known.Number} of the log");
        var (columns, compared, fileRows) = ComparedRows.Of(known.File, file);
        var loggedRows = known.File.Contents().ToList();
        var merge = RowMerge.Of(compared, fileRows);
        if (merge.Contradiction is { } rows)
        {
            return new() { Contradiction = $"{name} says otherwise: {Words(loggedRows, rows.Logged)} there, {Words(fileRows, rows.File)} in the file; {Advice(file)}" };
        }

        var header = Stated(known.Number, known.File.Id!.Value, file with { UnknownColumns = columns });
        var text = string.Join('\n', header.Header);
        var isKnown = headers.Contains(text, StringComparer.Ordinal);
        if (!isKnown && headers.Count > 1 && file.Id is not null)
        {
            return new() { Contradiction = $"{name} has another header: {Difference(headers[^1], text)}, and was changed since; {Advice(file)}" };
        }

        var records = new List<LogRecord>();
        if (!isKnown || columns.Length > known.File.UnknownColumns.Length)
        {
            records.Add(isKnown ? Stated(known.Number, known.File.Id!.Value, known.File with { UnknownColumns = columns }) : header);
        }

        AddRows(records, merge, known, loggedRows, fileRows);
        return new()
        {
            Run = known.Number,
            Added = records.OfType<LogRecord.RowAdded>().Count(),
            Voided = records.OfType<LogRecord.RowVoided>().Count(),
            Already = merge.Steps.Count(s => s is { Logged: not null, File: not null }),
            Records = records,
            RecordCount = records.Count,
            Contradiction = RowAppender.Fault(known.File.Run, Merged(merge, loggedRows, fileRows)),
        };
    }

    private static void AddRows(List<LogRecord> records, RowMerge merge, LoggedRun known, List<FileRow> loggedRows, IReadOnlyList<FileRow> fileRows)
    {
        var next = known.Rows.Length;
        var before = 0;
        var loggedLeft = known.Rows.Length;
        foreach (var step in merge.Steps)
        {
            if (step.Logged is { } i)
            {
                before = known.Rows[i];
                loggedLeft--;
                if (step.File is { } same && fileRows[same].Void is { } reason && loggedRows[i].Void is null)
                {
                    records.Add(new LogRecord.RowVoided(known.Number, before, reason));
                }
            }
            else
            {
                next++;
                records.Add(new LogRecord.RowAdded(known.Number, next, fileRows[step.File!.Value], loggedLeft > 0 ? before : null));
                before = next;
            }
        }
    }

    private static IEnumerable<FileRow> Merged(RowMerge merge, List<FileRow> loggedRows, IReadOnlyList<FileRow> fileRows)
        => merge.Steps.Select(s => s.File is { } j && (s.Logged is null || fileRows[j].Void is not null) ? fileRows[j] : loggedRows[s.Logged!.Value]);

    private static string Words(IReadOnlyList<FileRow> rows, int place)
    {
        if (place >= rows.Count)
        {
            return "nothing more";
        }

        var cells = Columns.All.Select(c => (c.Name, Text: c.Show(rows[place]))).Where(c => c.Text is not null).Select(c => $"{c.Name} {c.Text}");
        return FormattableString.Invariant($"row {place + 1} ({string.Join(", ", cells)})");
    }

    private static string Difference(string known, string read)
    {
        var (left, right) = (known.Split('\n'), read.Split('\n'));
        var (there, here) = (left.Except(right, StringComparer.Ordinal).FirstOrDefault(), right.Except(left, StringComparer.Ordinal).FirstOrDefault());
        return $"'{there ?? "nothing"}' there, '{here ?? "nothing"}' in the file";
    }

    private static string Advice(RunFile file) => file.Id is null
        ? "if it is another run, give it another name; if the log is wrong, make the row void and add the right one below it"
        : "the run went on in two places; make one of them void what the other lacks, or give one a run_id of its own";
}
