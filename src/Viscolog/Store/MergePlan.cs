using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>What the journal gets so that the log says what a file says.</summary>
/// <param name="Run">The run's number.</param>
/// <param name="Records">What to log; made while it is gone through, since a file may be long.</param>
/// <param name="RecordCount">How many records that is.</param>
/// <param name="Added">Rows that are new.</param>
/// <param name="Voided">Rows that become void.</param>
/// <param name="Already">Rows that the log has already.</param>
internal sealed record MergePlan(int Run, IEnumerable<LogRecord> Records, int RecordCount, int Added, int Voided, int Already)
{
    /// <summary>Whether the run is new to the log.</summary>
    public bool IsNew { get; private init; }

    /// <summary>What the file and the log can't both be right about; null where there is nothing.</summary>
    public string? Contradiction { get; private init; }

    /// <summary>The plan for a file.</summary>
    public static MergePlan Of(RunToImport run, QueryCopy copy)
    {
        var match = RunMatch.Of(run, copy);
        return match.Known is { } known ? Continued(run.Whole(), known) : New(run, match.NewId, copy.RunCount() + 1);
    }

    /// <summary>The plan for a run that the log lacks.</summary>
    public static MergePlan New(RunToImport run, Guid id, int number)
    {
        var rows = run.Texts is { } texts
            ? texts.Select(LogRecord (json, i) => new LogRecord.RowAdded(number, i + 1, RowJson.Read(json.Span)) { Json = json })
            : run.Rows.Select(LogRecord (row, i) => new LogRecord.RowAdded(number, i + 1, row));
        return new(number, rows.Prepend(Stated(number, id, run.Header)), 1 + run.Count, run.Count, 0, 0) { IsNew = true };
    }

    /// <summary>The record of a run's header.</summary>
    public static LogRecord.RunStated Stated(int run, Guid id, RunFile file)
        => new(run, id, [.. HeaderText.Of(file with { Id = null })], file.UnknownColumns.IsEmpty ? null : [.. file.UnknownColumns]);

    private static MergePlan Continued(RunFile file, LoggedRun known)
    {
        FileRow[] logged = [.. known.File.Contents()];
        var merge = RowMerge.Of(known, file);
        if (merge.Contradiction is (var there, var here))
        {
            return Contradicted(known, $"says otherwise: {Words(logged, there)} there, {Words(merge.File, here)} in the file", file);
        }

        var header = Stated(known.Number, known.File.Id!.Value, file with { UnknownColumns = merge.Columns });
        var text = string.Join('\n', header.Header);
        var isKnown = known.Headers.Contains(text, StringComparer.Ordinal);
        if (!isKnown && known.Headers.Length > 1 && file.Id is not null)
        {
            return Contradicted(known, $"has another header: {Difference(known.Headers[^1], text)}, and was changed since", file);
        }

        List<LogRecord> records = !isKnown ? [header]
            : merge.Columns.Length == known.File.UnknownColumns.Length ? []
            : [Stated(known.Number, known.File.Id!.Value, known.File with { UnknownColumns = merge.Columns })];
        records.AddRange(Rows(merge, known, logged));
        var (added, voided) = (records.OfType<LogRecord.RowAdded>().Count(), records.OfType<LogRecord.RowVoided>().Count());
        var already = merge.Steps.Count(s => s is { Logged: not null, File: not null });
        return new(known.Number, records, records.Count, added, voided, already)
        {
            Contradiction = RowAppender.Fault(known.File.Run, merge.Steps.Select(s => Merged(merge, logged, s.Logged, s.File))),
        };
    }

    private static IEnumerable<LogRecord> Rows(RowMerge merge, LoggedRun known, FileRow[] logged)
    {
        var (next, before, left) = (known.Rows.Length, 0, known.Rows.Length);
        foreach (var (there, here) in merge.Steps)
        {
            if (there is not { } i)
            {
                next++;
                yield return new LogRecord.RowAdded(known.Number, next, merge.File[here!.Value], left > 0 ? before : null);
                before = next;
                continue;
            }

            before = known.Rows[i];
            left--;
            if (logged[i].Void is null && here is { } same && merge.File[same].Void is { } reason && !merge.WasLifted(i, reason))
            {
                yield return new LogRecord.RowVoided(known.Number, before, reason);
            }
        }
    }

    private static FileRow Merged(RowMerge merge, FileRow[] logged, int? there, int? here)
        => here is { } j && (there is not { } i || (merge.File[j].Void is { } reason && !merge.WasLifted(i, reason))) ? merge.File[j] : logged[there!.Value];

    private static MergePlan Contradicted(LoggedRun known, string what, RunFile file)
    {
        var advice = file.Id is null
            ? "if it is another run, give it another name; if the log is wrong, make the row void and add the right one below it"
            : "the run went on in two places; make one of them void what the other lacks, or give one a run_id of its own";
        return new(known.Number, [], 0, 0, 0, 0)
        {
            Contradiction = FormattableString.Invariant($"run {known.Number} of the log {what}; {advice}"),
        };
    }

    private static string Words(IReadOnlyList<FileRow> rows, int place)
    {
        if (place >= rows.Count)
        {
            return "nothing more";
        }

        var cells = Columns.All.Where(c => c.Show(rows[place]) is not null).Select(c => $"{c.Name} {c.Show(rows[place])}");
        return FormattableString.Invariant($"row {place + 1} ({string.Join(", ", cells)})");
    }

    private static string Difference(string known, string read)
    {
        var (left, right) = (known.Split('\n'), read.Split('\n'));
        var there = left.Except(right, StringComparer.Ordinal).FirstOrDefault("nothing");
        var here = right.Except(left, StringComparer.Ordinal).FirstOrDefault("nothing");
        return $"'{there}' there, '{here}' in the file";
    }
}
