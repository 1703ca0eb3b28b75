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
    /// <param name="run">The file's run.</param>
    /// <param name="copy">What the log has.</param>
    /// <param name="isTaken">Whether another bench hands the run over: then its header is the one in force.</param>
    public static MergePlan Of(RunToImport run, QueryCopy copy, bool isTaken = false) => RunMatch.Of(run, copy) switch
    {
        RunMatch.Known known => Continued(run.Header, known.Run, known.Merge, isTaken),
        RunMatch.New { Id: var id } => New(run, id, copy.RunCount() + 1),
        _ => throw new InvalidOperationException("not a case of the closed set"),
    };

    /// <summary>The plan for a run that the log lacks.</summary>
    public static MergePlan New(RunToImport run, Guid id, int number)
    {
        var rows = run.Texts is { } texts
            ? texts.Select(LogRecord (json, i) => LogRecord.RowAdded.Of(number, i + 1, json))
            : run.Rows.Select(LogRecord (row, i) => new LogRecord.RowAdded(number, i + 1, row));
        return new(number, rows.Prepend(Stated(number, id, run.Header)), 1 + run.Count, run.Count, 0, 0) { IsNew = true };
    }

    /// <summary>The record of a run's header.</summary>
    public static LogRecord.RunStated Stated(int run, Guid id, RunFile file)
        => new(run, id, [.. HeaderText.Of(file with { Id = null })], file.UnknownColumns.IsEmpty ? null : [.. file.UnknownColumns]);

    private static MergePlan Continued(RunFile file, StreamedRun known, RowMerge merge, bool isTaken)
    {
        if (merge.Contradiction is (var there, var here))
        {
            return Contradicted(known, $"differs: {Words(there)} in the log, {Words(here)} in the file", file);
        }

        if (!isTaken && !merge.IsHeaderKnown && known.Headers.Length > 1 && file.Id is not null)
        {
            var difference = Difference(known.Headers[^1], string.Join('\n', merge.Header.Header));
            return Contradicted(known, $"has another header: {difference}, and was changed since", file);
        }

        LogRecord[] stated = !merge.IsHeaderKnown ? [merge.Header]
            : merge.Columns.Length == known.Header.UnknownColumns.Length ? []
            : [Stated(known.Number, known.Id, known.Header with { UnknownColumns = merge.Columns })];
        var changes = merge.Changes;
        var count = stated.Length + changes.Added + changes.Voided;
        return new(
            known.Number,
            stated.Concat(changes.Records()),
            count,
            changes.Added,
            changes.Voided,
            merge.Already)
        {
            Contradiction = merge.Fault
                ?? (count > 0 && !isTaken && known.HandedTo is not null ? WriteOutcome.Handed(known.Number) : null),
        };
    }

    private static MergePlan Contradicted(StreamedRun known, string what, RunFile file)
    {
        var advice = file.Id is null
            ? "if it is another run, give it another name; if the log is wrong, void the row and add the right one below it"
            : "the run went on in two places; void in one what the other lacks, or give one its own run_id";
        return new(known.Number, [], 0, 0, 0, 0)
        {
            Contradiction = FormattableString.Invariant($"run {known.Number} of the log {what}; {advice}"),
        };
    }

    private static string Words((int Place, FileRow? Row) at)
    {
        if (at.Row is not { } row)
        {
            return "nothing more";
        }

        var cells = Columns.All.Where(c => c.Show(row) is not null).Select(c => $"{c.Name} {c.Show(row)}");
        return FormattableString.Invariant($"row {at.Place + 1} ({string.Join(", ", cells)})");
    }

    private static string Difference(string known, string read)
    {
        var (left, right) = (known.Split('\n'), read.Split('\n'));
        var there = left.Except(right, StringComparer.Ordinal).FirstOrDefault("nothing");
        var here = right.Except(left, StringComparer.Ordinal).FirstOrDefault("nothing");
        return $"'{there}' in the log, '{here}' in the file";
    }
}
