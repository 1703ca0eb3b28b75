using Viscolog.RunFiles;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>
/// Turns the sound records of a damaged journal into those of a new log: runs and oil readings numbered anew, and in the place of each row
/// that is lost a void one that says so. A run's rows behind a lost one are void as well: nobody knows what was in the pot then.
/// </summary>
internal sealed class SalvagedRecords(SoundLines sound, Stream journal, long acknowledged, string now)
{
    private readonly Dictionary<int, SalvagedRun> _runs = [];
    private readonly Dictionary<int, int> _oils = [];
    private readonly SortedDictionary<int, int> _homeless = [];
    private readonly List<(long First, long Last)> _lost = [];
    private long _next = 1;
    private long _unfinished;
    private string _at = now;

    /// <summary>Sound lines that were read.</summary>
    public long Read { get; private set; }

    /// <summary>Sound rows of runs.</summary>
    public long Rows { get; private set; }

    /// <summary>The records, in order, each with its time.</summary>
    public IEnumerable<LogRecord> All()
    {
        foreach (var (number, offset, record) in sound.Records(journal))
        {
            if (_next < number)
            {
                _lost.Add((_next, number - 1));
            }

            (_next, Read) = (number + 1, Read + 1);
            if (record is LogRecord.BatchBegun batch && number + batch.Lines + 1 > sound.Last && offset >= acknowledged)
            {
                // The last batch never got its end: nothing of it was acknowledged.
                _unfinished = sound.Last - number + 1;
                yield break;
            }

            _at = record.At ?? _at;
            foreach (var made in Of(record))
            {
                yield return made with { At = _at };
            }
        }
    }

    /// <summary>What is lost and what counts no more, a line each.</summary>
    public IEnumerable<string> Losses()
    {
        foreach (var (first, last) in _lost)
        {
            yield return first == last
                ? FormattableString.Invariant($"line {first} is lost; what it said is unknown")
                : FormattableString.Invariant($"lines {first} to {last} are lost; what they said is unknown");
        }

        foreach (var run in _runs.Values.Where(r => r.FirstLost > 0))
        {
            yield return FormattableString.Invariant(
                $"run {run.Number} of the new log lacks a row from row {run.FirstLost} on; what was logged after it is kept, void")
                + ": export the run, correct it and import it as another one";
        }

        foreach (var (run, rows) in _homeless)
        {
            yield return rows == 1
                ? FormattableString.Invariant($"1 sound record is left out: it belongs to run {run}, whose header is lost")
                : FormattableString.Invariant($"{rows} sound records are left out: they belong to run {run}, whose header is lost");
        }

        if (_unfinished > 0)
        {
            yield return _unfinished == 1
                ? "the last line is left out: it had not been acknowledged"
                : FormattableString.Invariant($"the last {_unfinished} lines are left out: they had not been acknowledged");
        }
    }

    private IEnumerable<LogRecord> Of(LogRecord record)
    {
        switch (record)
        {
            case LogRecord.RunStated stated:
                return Stated(stated);
            case LogRecord.RowAdded added when _runs.TryGetValue(added.Run, out var run):
                Rows++;
                return run.Add(added);
            case LogRecord.RowVoided voided when _runs.TryGetValue(voided.Run, out var run):
                return run.Void(voided);
            case LogRecord.VoidLifted lifted when _runs.TryGetValue(lifted.Run, out var run):
                return run.Lift(lifted);
            case LogRecord.ClockSet clock when _runs.TryGetValue(clock.Run, out var run):
                return [clock with { Run = run.Number }];
            case LogRecord.RunArchived archived when _runs.TryGetValue(archived.Run, out var run):
                return [archived with { Run = run.Number }];
            case LogRecord.RunHanded handed when _runs.TryGetValue(handed.Run, out var run):
                return [handed with { Run = run.Number }];
            case LogRecord.RowAdded { Run: var run }:
                return Homeless(run);
            case LogRecord.RowVoided { Run: var run }:
                return Homeless(run);
            case LogRecord.VoidLifted { Run: var run }:
                return Homeless(run);
            case LogRecord.MaterialStated:
                return [record];
            case LogRecord.OilRead oil:
                return [oil with { Oil = _oils[oil.Oil] = _oils.Count + 1 }];
            case LogRecord.OilVoided oil:
                return _oils.TryGetValue(oil.Oil, out var number) ? [oil with { Oil = number }] : [];
            default:
                return [];
        }
    }

    private LogRecord[] Stated(LogRecord.RunStated stated)
    {
        if (!_runs.TryGetValue(stated.Run, out var run))
        {
            _runs[stated.Run] = run = new(_runs.Count + 1);
        }

        run.Thickeners = [.. HeaderText.TryRead(stated.Header).File?.Run.Thickeners.SelectMany(t => t.Formerly.Prepend(t.Name)) ?? []];
        return [stated with { Run = run.Number }];
    }

    private LogRecord[] Homeless(int run)
    {
        _homeless[run] = _homeless.GetValueOrDefault(run) + 1;
        return [];
    }
}

/// <summary>A run while it is salvaged.</summary>
/// <param name="number">Its number in the new log.</param>
internal sealed class SalvagedRun(int number)
{
    private readonly HashSet<int> _voided = [];
    private int _rows;

    public int Number => number;

    /// <summary>The first row that is lost, by its number; 0 where none is.</summary>
    public int FirstLost { get; private set; }

    /// <summary>The thickeners that its header names.</summary>
    public HashSet<string> Thickeners { get; set; } = [];

    public IEnumerable<LogRecord> Add(LogRecord.RowAdded added)
    {
        if (added.Row <= _rows)
        {
            yield break;
        }

        while (_rows + 1 < added.Row)
        {
            FirstLost = FirstLost == 0 ? _rows + 1 : FirstLost;
            yield return new LogRecord.RowAdded(number, ++_rows, new() { Note = "a lost row", Void = "lost: the journal was damaged" });
        }

        _rows++;
        if (FirstLost == 0 && added.Is.Dosed is { Thickener: var name } && !Thickeners.Contains(name))
        {
            // A header that was stated in between is lost.
            FirstLost = _rows;
        }

        var row = FirstLost == 0 ? added.Is : added.Is with { Void = added.Is.Void ?? "after a lost row" };
        if (row.Void is not null)
        {
            _voided.Add(_rows);
        }

        yield return added with { Run = number, Is = row };
    }

    public IEnumerable<LogRecord> Void(LogRecord.RowVoided voided)
        => voided.Row <= _rows && (FirstLost == 0 || voided.Row < FirstLost) && _voided.Add(voided.Row)
            ? [voided with { Run = number }]
            : [];

    public IEnumerable<LogRecord> Lift(LogRecord.VoidLifted lifted)
        => lifted.Row <= _rows && (FirstLost == 0 || lifted.Row < FirstLost) && _voided.Remove(lifted.Row)
            ? [lifted with { Run = number }]
            : [];
}
