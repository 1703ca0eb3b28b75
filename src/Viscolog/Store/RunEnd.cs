using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>The end of a logged run, to which rows can be added without going through those before again.</summary>
internal sealed class RunEnd
{
    private readonly RowAppender _rows;
    private int _next;
    private string? _fault;

    private RunEnd(StreamedRun run) => (Run, _rows, _next) = (run.Number, new(run.Header.Run), run.Count + 1);

    /// <summary>The run's number.</summary>
    public int Run { get; }

    /// <summary>The end of a run; its rows are gone through once.</summary>
    public static RunEnd Of(StreamedRun run)
    {
        var end = new RunEnd(run);
        end._fault = run.HandedTo is not null ? WriteOutcome.Handed(run.Number)
            : run.Rows.Select(r => end._rows.Fault(r.Row)).FirstOrDefault(f => f is not null);
        return end;
    }

    /// <summary>
    /// The record of one more row, or why the run could then not be exported and read again; after that it is of no more use.
    /// </summary>
    public (LogRecord Record, string? Fault) Add(FileRow row)
    {
        _fault ??= _rows.Fault(row);
        return (new LogRecord.RowAdded(Run, _next++, row), _fault);
    }
}
