using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>
/// The log: every run that was measured at this bench or brought to it. The journal is the record of truth, the query copy answers
/// questions. For one thread.
/// </summary>
internal sealed class BenchLog : IDisposable
{
    /// <summary>Earlier runs that are looked up at most.</summary>
    private const int MostEarlier = 100;

    /// <summary>Own earlier runs that are enough: then other benches are not asked.</summary>
    private const int EnoughEarlier = 20;

    /// <summary>Earlier runs of another bench that are looked up at most; advice takes as many into account.</summary>
    private const int MostElsewhere = 8;

    private readonly TimeProvider _clock;
    private readonly LogHold _hold;
    private readonly JournalWriter? _journal;
    private readonly JournalMark? _mark;
    private QueryCopy? _copy;
    private string? _fault;

    // Of the run that a row was added to last: the next is added without going through the others again.
    private RunEnd? _end;

    internal BenchLog(LogPlace place, JournalScan scan, LogUse use, LogHold hold, TimeProvider clock, QueryCopy? copy)
    {
        (Place, Sound, _hold, _clock) = (place, scan, hold, clock);
        if (use == LogUse.Write)
        {
            _journal = new(place.Disk, hold.Claim!.File, scan);
            _mark = new(place.Mark, place.Journal);
            // From here on the query copy changes, so the seal no longer holds.
            place.Disk.Delete(place.Seal);
            // LiteDB would open its log beside the copy to everybody.
            if (copy is null && !File.Exists(place.CopyLog))
            {
                Disk.New(place.CopyLog, Disk.ModeOf(place.Journal)).Dispose();
            }

            // An earlier start may have died between making the journal and flushing its name.
            place.Disk.FlushFolder(place.Folder);
        }

        _copy = copy ?? CopyFile.Open(place.Copy, readOnly: use == LogUse.Read);
    }

    /// <summary>What was mended when the log was opened, a line each.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Where it is.</summary>
    public LogPlace Place { get; }

    /// <summary>The log's identity.</summary>
    public Guid Id => field != default ? field : field = JournalFile.IdOf(Place.Journal)!.Value;

    /// <summary>What was sound in the journal when the log was opened.</summary>
    internal JournalScan Sound { get => _journal?.Now ?? field; }

    private QueryCopy Copy => _copy ?? throw new InvalidOperationException(_fault);

    /// <summary>Opens the log of a place.</summary>
    /// <param name="place">Where it is.</param>
    /// <param name="use">What for.</param>
    /// <param name="clock">The time.</param>
    /// <param name="progress">Receives reports from time to time; may be null.</param>
    /// <param name="patience">How long to wait for another program that has it; null for two seconds.</param>
    public static Outcome<BenchLog> Open(
        LogPlace place, LogUse use, TimeProvider clock, IProgress<LogProgress>? progress, LogPatience? patience = null)
        => new LogOpening(place, use, clock, progress, patience ?? LogPatience.Short).Open();

    /// <summary>What a list says of each run, by number.</summary>
    public IReadOnlyList<RunSummary> Runs() => Copy.Runs();

    /// <summary>The run of a number; null where there is none.</summary>
    public LoggedRun? Run(int number) => Copy.Run(number);

    /// <summary>The run of a UUID; null where there is none.</summary>
    public LoggedRun? Run(Guid id) => Copy.Run(id);

    /// <summary>The run of a number or else a UUID, whose rows are read while they are gone through; null where there is none.</summary>
    public StreamedRun? Streamed(int? number, Guid? id) => Copy.Streamed(number, id);

    /// <summary>
    /// The latest runs with a run's base and any of its thickeners, the earliest first; those of other benches come before this log's.
    /// </summary>
    /// <param name="run">The run.</param>
    /// <param name="number">Its number where the log has it: then, of this log's, only runs that were begun before it.</param>
    public ImmutableArray<Run> Earlier(Run run, int? number)
    {
        List<LoggedRun> own = [.. Copy.Earlier(run, number, MostEarlier)];
        if (own.Count >= EnoughEarlier)
        {
            return [.. own.Select(r => r.File.Run)];
        }

        var others = SharedRuns(log => log.Copy.Earlier(run, null, MostElsewhere))
            .OrderBy(r => r.Run.Last)
            .TakeLast(MostElsewhere)
            .ToList();
        var elsewhere = others.Select(r => r.File.Id).ToHashSet();
        return [.. others.Select(r => r.File.Run), .. own.Where(r => !elsewhere.Contains(r.File.Id)).Select(r => r.File.Run)];
    }

    /// <summary>The runs of other benches that this log has not, or has handed over, by bench.</summary>
    public ImmutableArray<SharedRun> SharedRuns() => SharedRuns(log => log.Runs().Select(r => log.Run(r.Number)!));

    /// <summary>Those that are sought in the log of each bench.</summary>
    public ImmutableArray<SharedRun> SharedRuns(Func<BenchLog, IEnumerable<LoggedRun>> find) => Others.Find(_clock, find, IsOurs);

    /// <summary>The runs that other benches have handed to this one, and that are not taken over yet.</summary>
    public ImmutableArray<SharedRun> Handed()
        => Others.Find(
            _clock,
            log => log.Runs().Where(r => r.HandedTo == Id).Select(r => log.Run(r.Number)!),
            id => Run(id) is { HandedTo: null });

    /// <summary>Whether this log goes on with a run: it has it, and has not handed it over.</summary>
    private bool IsOurs(Guid id) => Copy.Streamed(null, id) is { HandedTo: null };

    /// <summary>What other benches have, where this one shares its record.</summary>
    public Mirrors Others => new(Place);

    /// <summary>The number under which the log has the run of a file; null where it has not.</summary>
    public int? Find(RunFile file) => (RunMatch.Of(RunToImport.Of(file), Copy) as RunMatch.Known)?.Run.Number;

    /// <summary>The materials, by kind and name.</summary>
    public IReadOnlyList<MaterialRow> Materials() => Copy.Materials();

    /// <summary>Readings of certified oils, by number.</summary>
    public IReadOnlyList<LoggedOil> Oils() => Copy.Oils();

    /// <summary>Brings a run file in: as a new run, as the continuation of one, or not at all.</summary>
    /// <returns>What came of it, and what was to be logged; null where that could not be found out.</returns>
    public (WriteOutcome Outcome, MergePlan? Plan) Import(RunFile file, CancellationToken stop) => Import(RunToImport.Of(file), stop);

    /// <inheritdoc cref="Import(RunFile, CancellationToken)"/>
    public (WriteOutcome Outcome, MergePlan? Plan) Import(RunToImport run, CancellationToken stop)
    {
        _end = null;
        if (Looked(() => MergePlan.Of(run, Copy)) is not { } plan)
        {
            return (new WriteOutcome.NotSaved(_fault!), null);
        }

        return plan.Contradiction is { } contradiction
            ? (new WriteOutcome.Contradicted(contradiction), plan)
            : (Commit(plan.Records, plan.RecordCount, stop), plan);
    }

    /// <summary>Begins a run: its header, and rows where there are some already.</summary>
    public (WriteOutcome Outcome, int Run) Begin(RunFile file)
    {
        var id = file.Id ?? JournalFile.NewId(_clock.GetUtcNow());
        var plan = MergePlan.New(RunToImport.Of(file with { Id = id }), id, Copy.RunCount() + 1);
        return (Commit(plan.Records, plan.RecordCount, CancellationToken.None), plan.Run);
    }

    /// <summary>Adds a row to the end of a run.</summary>
    public WriteOutcome Add(int run, FileRow row)
    {
        if (Looked(() => _end?.Run == run ? _end : RunEnd.Of(Streamed(run, null) ?? throw NoSuch(run))) is not { } end)
        {
            return new WriteOutcome.NotSaved(_fault!);
        }

        var (record, fault) = end.Add(row);
        var outcome = fault is null ? Commit(record) : new WriteOutcome.NotSaved(fault);
        _end = outcome is WriteOutcome.Saved ? end : null;
        return outcome;
    }

    /// <summary>Makes a row void; nothing disappears.</summary>
    public WriteOutcome Void(int run, int row, string reason) => Edit(run, new RunEdit.Void(row, reason));

    /// <summary>Changes rows of a run, all of it or nothing; not saved where the run could not be exported and read again.</summary>
    public WriteOutcome Edit(int run, params RunEdit[] edits)
    {
        if (edits is [RunEdit.Add { After: null, Row: var row }])
        {
            return Add(run, row);
        }

        _end = null;
        if (Looked(() => Known(run)) is not { } logged)
        {
            return new WriteOutcome.NotSaved(_fault!);
        }

        var (records, fault) = logged.HandedTo is null ? RunEdit.Records(logged, edits) : ([], WriteOutcome.Handed(run));
        return fault is null ? Commit(records) : new WriteOutcome.NotSaved(fault);
    }

    /// <summary>Sets the clock of a run's last step.</summary>
    public WriteOutcome SetClock(int run, StirTimes times)
        => Commit(new LogRecord.ClockSet(run, Stamp(times.Began), Stamp(times.Ended)));

    /// <summary>Hands a run to the log of another bench, which goes on with it; here nothing more is added to it.</summary>
    public WriteOutcome Hand(int run, Guid to)
    {
        _end = null;
        return Commit(new LogRecord.RunHanded(run, to));
    }

    /// <summary>Goes on with a run that another bench has handed to this one: it comes in as it is there.</summary>
    public (WriteOutcome Outcome, MergePlan? Plan) Take(RunFile file)
    {
        _end = null;
        if (Looked(() => MergePlan.Of(RunToImport.Of(file), Copy, isTaken: true)) is not { } plan)
        {
            return (new WriteOutcome.NotSaved(_fault!), null);
        }

        LogRecord[] records = [.. plan.IsNew ? Array.Empty<LogRecord>() : [new LogRecord.RunHanded(plan.Run)], .. plan.Records];
        return plan.Contradiction is { } contradiction
            ? (new WriteOutcome.Contradicted(contradiction), plan)
            : (Commit(records), plan);
    }

    /// <summary>
    /// Takes back lines that this log has lost, as they stood in its journal; it is to be closed then. Null, or why it can't be.
    /// </summary>
    public string? TakeBack(IEnumerable<string> lines)
    {
        try
        {
            _journal!.AppendLost(lines);
            LetGo("lines were taken back; open the log again");
            return null;
        }
        catch (Exception e) when (e is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            LetGo("lines could not be taken back; open the log again");
            return OneLine.Of(e.Message);
        }
    }

    /// <summary>Puts a run away from the list of runs, or brings it back.</summary>
    public WriteOutcome Archive(int run, bool isArchived) => Commit(new LogRecord.RunArchived(run, isArchived));

    /// <summary>States a run's header anew, such as another target; its rows stay.</summary>
    public WriteOutcome Restate(int run, RunFile header)
    {
        _end = null;
        if (Looked(() => Known(run)) is not { } known)
        {
            return new WriteOutcome.NotSaved(_fault!);
        }

        return known.HandedTo is not null ? new WriteOutcome.NotSaved(WriteOutcome.Handed(run))
            : RowAppender.Fault(header.Run, known.File.Contents()) is { } fault
            ? new WriteOutcome.NotSaved($"the entries do not fit it: {fault}")
            : Commit(MergePlan.Stated(run, known.File.Id!.Value, header));
    }

    /// <summary>States materials, new or anew; those that the log has already as they are stay untouched.</summary>
    public (WriteOutcome Outcome, int Stated) State(IEnumerable<MaterialRow> materials)
    {
        LogRecord[] changed = [.. materials.Select(StoredCells.Of).Where(m => !Copy.Has(m)).Select(m => new LogRecord.MaterialStated(m))];
        return (Commit(changed), changed.Length);
    }

    /// <summary>Brings readings of certified oils in; those that the log has already are not added twice.</summary>
    public (WriteOutcome Outcome, OilMerge Merge) AddOils(IEnumerable<OilRow> rows)
    {
        var merge = OilMerge.Of(rows, Oils());
        return (Commit([.. merge.Records]), merge);
    }

    /// <summary>Adds one reading of a certified oil, whether one that says the same is there or not.</summary>
    public WriteOutcome AddOil(OilRow row) => Commit(new LogRecord.OilRead(Oils().Count + 1, row.Cells));

    /// <summary>Makes a reading of a certified oil void; nothing disappears.</summary>
    public WriteOutcome VoidOil(int number, string reason)
        => Oils().FirstOrDefault(o => o.Number == number) switch
        {
            null => new WriteOutcome.NotSaved(FormattableString.Invariant($"the log has no oil reading {number}")),
            { Row.Void: { } earlier } => new WriteOutcome.NotSaved($"that reading is void already: {earlier}"),
            _ => Commit(new LogRecord.OilVoided(number, reason)),
        };

    /// <summary>Closes the query copy while the lock is kept, so that it can be compared; says what the journal is.</summary>
    internal JournalScan CloseForCheck()
    {
        LetGo("the log is being checked");
        return _journal?.Now ?? throw new InvalidOperationException("the log was opened to be read");
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        CloseCopy();
        if (_journal is not null)
        {
            _mark?.Dispose();
            if (_fault is null && !_journal.IsBroken && _journal.IsUntouched())
            {
                SealUp(_journal.Now);
            }

            _journal.Dispose();
        }

        _hold.Dispose();
    }

    private LoggedRun Known(int run) => Run(run) ?? throw NoSuch(run);

    private static ArgumentOutOfRangeException NoSuch(int run) => new(nameof(run), run, "the log has no such run");

    private static string? Stamp(DateTimeOffset? time) => time is { } at ? JournalFile.Stamp(at) : null;

    /// <summary>Looks something up before anything is written; null, with the fault, where the query copy fails or has failed.</summary>
    private T? Looked<T>(Func<T> look)
        where T : class
    {
        if (_fault is not null)
        {
            return null;
        }

        try
        {
            return look();
        }
        catch (Exception e) when (e is not (OutOfMemoryException or ArgumentException))
        {
            // LiteDB throws exceptions of many types, and its instance is of no use after any of them.
            LetGo(OneLine.Of($"the query copy failed, nothing was saved; close the log and open it again ({e.Message})"));
            return null;
        }
    }

    private WriteOutcome Commit(params LogRecord[] records) => Commit(records, records.Length, CancellationToken.None);

    /// <summary>Adds records to the journal, flushed, then to the query copy. Nothing else writes.</summary>
    private WriteOutcome Commit(IEnumerable<LogRecord> records, int count, CancellationToken stop)
    {
        if (count == 0)
        {
            return new WriteOutcome.Saved();
        }

        var journal = _journal ?? throw new InvalidOperationException("the log was opened to be read");
        if (_fault is not null)
        {
            return new WriteOutcome.NotSaved(_fault);
        }

        var at = JournalFile.Stamp(_clock.GetUtcNow());
        try
        {
            Copy.Check(records);
            journal.Append(records, count, at, stop);
            _mark!.Set(journal.Now.Length);
        }
        catch (Exception e) when (e is InvalidDataException or MisfitException or FormatException)
        {
            return new WriteOutcome.NotSaved(OneLine.Of($"it can't be logged: {e.Message}"));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            var state = journal.IsBroken ? "it is not acknowledged, and the next start may find it or not" : "it is not in the log";
            return new WriteOutcome.NotSaved(OneLine.Of($"{Place.Journal} could not be written, {state}: {e.Message}"));
        }

        try
        {
            foreach (var record in Output.Streamed.InOrder(records, r => Read(r) with { At = at }))
            {
                Copy.Apply(record);
            }

            Copy.Flush();
            return new WriteOutcome.Saved();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // As above.
            LetGo("the query copy failed; close the log and open it again");
            return new WriteOutcome.SavedOnly(OneLine.Of($"saved; the query copy is repaired at the next start ({e.Message})"));
        }
    }

    /// <summary>The record with its row read, where that was not needed so far.</summary>
    private static LogRecord Read(LogRecord record) => record is LogRecord.RowAdded { Is: not null } row ? row : record;

    /// <summary>Closes the query copy after a fault; nothing can be looked up or added until the log is opened again.</summary>
    private void LetGo(string fault)
    {
        _fault = fault;
        CloseCopy();
    }

    private void CloseCopy()
    {
        try
        {
            _copy?.Dispose();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // Such as on a full disk. Nothing in it is needed: without a seal it is made anew from the journal.
            _fault ??= "the query copy could not be closed";
        }

        _copy = null;
    }

    private void SealUp(JournalScan scan)
    {
        try
        {
            CopyBuilder.SealUp(Place, scan);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Without a seal the next start makes the query copy anew, which loses nothing.
        }
    }
}

/// <summary>What a log is opened for.</summary>
internal enum LogUse
{
    /// <summary>To look things up; a log is not made, and left as it is where nothing needs mending.</summary>
    Read,

    /// <summary>To add to it; it is made where there is none.</summary>
    Write,
}
