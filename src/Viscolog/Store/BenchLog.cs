using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>
/// The log: every run that was measured at this bench or brought to it. The journal is the record of truth, the query copy answers questions. For
/// one thread.
/// </summary>
internal sealed class BenchLog : IDisposable
{
    /// <summary>Earlier runs that are looked up at most.</summary>
    private const int MostEarlier = 100;

    private readonly LogPlace _place;
    private readonly TimeProvider _clock;
    private readonly LogLock? _lock;
    private readonly JournalWriter? _journal;
    private QueryCopy? _copy;
    private string? _fault;

    internal BenchLog(LogPlace place, JournalScan scan, LogUse use, LogLock? taken, TimeProvider clock, QueryCopy? copy)
    {
        (_place, _lock, _clock) = (place, taken, clock);
        if (use == LogUse.Write)
        {
            _journal = new(place.Journal, scan);
            // From here on the copy changes; a seal that says otherwise would only be found wrong at the next start.
            File.Delete(place.Seal);
            // An earlier start may have died between making the journal and flushing its name.
            Disk.FlushFolder(place.Folder);
        }

        _copy = copy ?? new(CopyFile.Open(place.Copy, readOnly: use == LogUse.Read));
    }

    /// <summary>What was mended when the log was opened, a line each.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Where it is.</summary>
    public LogPlace Place => _place;

    private QueryCopy Copy => _copy ?? throw new InvalidOperationException(_fault);

    /// <summary>Opens the log of a place.</summary>
    public static LogOutcome Open(LogPlace place, LogUse use, TimeProvider clock, IProgress<LogProgress>? progress)
        => new LogOpening(place, use, clock, progress).Open();

    /// <summary>What a list says of each run, by number.</summary>
    public IReadOnlyList<RunSummary> Runs() => [.. Copy.Runs().Select(Summary)];

    /// <summary>The run of a number; null where there is none.</summary>
    public LoggedRun? Run(int number) => Copy.Run(number) is { } doc ? Whole(doc) : null;

    /// <summary>The run of a UUID; null where there is none.</summary>
    public LoggedRun? Run(Guid id) => Copy.Run(id) is { } doc ? Whole(doc) : null;

    /// <summary>The latest runs with a run's base and any of its thickeners, the earliest first.</summary>
    /// <param name="run">The run.</param>
    /// <param name="number">Its number where the log has it: then only runs that were begun before it.</param>
    public ImmutableArray<Run> Earlier(Run run, int? number)
    {
        var docs = run.Base.Name is null ? [] : run.Thickeners.SelectMany(t => Copy.RunsByPair(RunState.PairOf(run.Base.Name, t.Name)));
        return [.. docs.DistinctBy(d => d.Id).Where(d => number is null || d.Id < number).OrderBy(d => d.Id).TakeLast(MostEarlier).Select(d => Whole(d).File.Run)];
    }

    /// <summary>The number under which the log has the run of a file; null where it has not.</summary>
    public int? Find(RunFile file) => RunMatch.Of(file, this).Known?.Number;

    /// <summary>Brings a run file in: as a new run, as the continuation of one, or not at all.</summary>
    public ImportOutcome Import(RunFile file, CancellationToken stop)
    {
        if (Looked(() => MergePlan.Of(file, RunMatch.Of(file, this), Copy.RunCount() + 1)) is not ({ } plan, null))
        {
            return new ImportOutcome.NotAcknowledged(_fault!);
        }

        if (plan.Contradiction is { } contradiction)
        {
            return new ImportOutcome.Contradicted(contradiction);
        }

        return Commit(plan.Records, plan.RecordCount, stop) switch
        {
            WriteOutcome.Saved => new ImportOutcome.Imported(plan),
            WriteOutcome.SavedOnly saved => new ImportOutcome.NotAcknowledged(saved.Reason),
            WriteOutcome.NotSaved not => new ImportOutcome.NotAcknowledged(not.Reason),
            _ => throw new InvalidOperationException("not a case of the closed set"),
        };
    }

    /// <summary>Begins a run: its header, and rows where there are some already.</summary>
    public (WriteOutcome Outcome, int Run) Begin(RunFile file)
    {
        var id = file.Id ?? Guid.CreateVersion7(_clock.GetUtcNow());
        var number = Copy.RunCount() + 1;
        var plan = MergePlan.Of(file with { Id = id }, new(null, id, null), number);
        return (Commit(plan.Records, plan.RecordCount, CancellationToken.None), number);
    }

    /// <summary>Adds a row to the end of a run.</summary>
    public WriteOutcome Add(int run, FileRow row)
        => Commit(run, (logged, rows) =>
        {
            rows.Add(row);
            return [new LogRecord.RowAdded(run, logged.Rows.Length + 1, row)];
        });

    /// <summary>Makes a row void; nothing disappears.</summary>
    public WriteOutcome Void(int run, int row, string reason)
        => Commit(run, (logged, rows) =>
        {
            var place = PlaceOf(logged, row);
            rows[place] = rows[place] with { Void = reason };
            return [new LogRecord.RowVoided(run, row, reason)];
        });

    /// <summary>Makes a row void and puts another in its place.</summary>
    public WriteOutcome Replace(int run, int row, string reason, FileRow by)
    {
        var replacing = by with { Replaces = true };
        return Commit(run, (logged, rows) =>
        {
            var place = PlaceOf(logged, row);
            rows[place] = rows[place] with { Void = reason };
            rows.Insert(place + 1, replacing);
            return [new LogRecord.RowVoided(run, row, reason), new LogRecord.RowAdded(run, logged.Rows.Length + 1, replacing, row)];
        });
    }

    /// <summary>States a run's header anew, such as another target; its rows stay.</summary>
    public WriteOutcome Restate(int run, RunFile header)
        => Commit([MergePlan.Stated(run, Guid.Parse(Doc(run).Uuid), header)]);

    /// <summary>The materials, by kind and name.</summary>
    public IReadOnlyList<MaterialRow> Materials()
        => [.. Copy.Materials().Select(m => StoredMaterials.Read(new(m.Kind, m.Name, new(m.Cells, StringComparer.Ordinal))))];

    /// <summary>States materials, new or anew; those that the log has already as they are stay untouched.</summary>
    public (WriteOutcome Outcome, int Stated) State(IEnumerable<MaterialRow> materials)
    {
        var changed = materials.Select(StoredMaterials.Of).Where(m => Copy.Material(m.Kind, m.Name) is not { } known || !Same(known.Cells, m.Cells)).Select(LogRecord (m) => new LogRecord.MaterialStated(m)).ToList();
        return (changed.Count == 0 ? new WriteOutcome.Saved() : Commit(changed), changed.Count);
    }

    /// <summary>Readings of certified oils, by number.</summary>
    public IReadOnlyList<LoggedOil> Oils() => [.. Copy.Oils().Select(o => new LoggedOil(o.Id, StoredOils.Read(o)))];

    /// <summary>Brings readings of certified oils in; those that the log has already are not added twice.</summary>
    public (WriteOutcome Outcome, OilMerge Merge) AddOils(IEnumerable<OilRow> rows)
    {
        var merge = OilMerge.Of(rows, Oils());
        return (Commit(merge.Records, merge.Records.Count, CancellationToken.None), merge);
    }

    /// <summary>Adds one reading of a certified oil, whether one that says the same is there or not.</summary>
    public WriteOutcome AddOil(OilRow row) => Commit([new LogRecord.OilRead(Copy.Oils().Count + 1, new(row.Cells, StringComparer.Ordinal))]);

    /// <summary>Makes a reading of a certified oil void; nothing disappears.</summary>
    public WriteOutcome VoidOil(int number, string reason)
        => Copy.Oils().FirstOrDefault(o => o.Id == number) switch
        {
            null => new WriteOutcome.NotSaved(FormattableString.Invariant($"the log has no oil reading {number}")),
            { Voided: { } earlier } => new WriteOutcome.NotSaved($"that reading is void already: {earlier}"),
            _ => Commit([new LogRecord.OilVoided(number, reason)]),
        };

    /// <summary>The runs that a file without a UUID may be.</summary>
    internal IEnumerable<LoggedRun> RunsByKey(string key) => Copy.RunsByKey(key).Select(Whole);

    /// <summary>The headers that a run had, the earliest first, the one in force last; each as one text.</summary>
    internal IReadOnlyList<string> Headers(int run) => [.. Doc(run).Earlier, string.Join('\n', Doc(run).Header)];

    /// <summary>Closes the query copy while the lock is kept, so that it can be compared; says what the journal is.</summary>
    internal JournalScan CloseForCheck()
    {
        _fault = "the log is being checked";
        CloseCopy();
        return _journal?.Now ?? throw new InvalidOperationException("the log was opened to be read");
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        CloseCopy();
        if (_journal is not null)
        {
            var scan = _journal.Now;
            _journal.Dispose();
            if (_fault is null)
            {
                SealUp(scan);
            }
        }

        _lock?.Dispose();
    }

    private static bool Same(Dictionary<string, string> left, SortedDictionary<string, string> right)
        => left.Count == right.Count && left.All(p => right.TryGetValue(p.Key, out var text) && text == p.Value);

    private static RunSummary Summary(RunDoc doc)
    {
        var header = HeaderText.Read(doc.Header).Run;
        return new(doc.Id, Guid.Parse(doc.Uuid), doc.Name, doc.Base, header.Lot, [.. doc.Thickeners], doc.Rows, doc.Voided, doc.Readings, Time(doc.Last)) { Product = header.Product };
    }

    private static DateTimeOffset Time(string text)
        => FileTime.TryParse(text, out var time) ? time : throw new FormatException($"'{text}' is no time");

    private LoggedRun Whole(RunDoc doc)
    {
        var rows = Copy.RowsOf(doc.Id);
        if (rows.Count != doc.Rows)
        {
            throw new InvalidDataException(FormattableString.Invariant($"the query copy has {rows.Count} of the {doc.Rows} rows of run {doc.Id}; 'viscolog verify' makes it anew"));
        }

        var header = HeaderText.Read(doc.Header) with { Id = Guid.Parse(doc.Uuid), UnknownColumns = [.. doc.Columns] };
        return new(doc.Id, header.With(rows.Select(r => r.Row())), [.. rows.Select(r => r.Number())]);
    }

    private RunDoc Doc(int run) => Copy.Run(run) ?? throw new ArgumentOutOfRangeException(nameof(run), run, "the log has no such run");

    private static int PlaceOf(LoggedRun run, int row) => run.Rows.IndexOf(row) is >= 0 and var place
        ? place
        : throw new ArgumentOutOfRangeException(nameof(row), row, "the run has no such row");

    /// <summary>Commits a change of a run's rows, unless the run could not be exported and read again then.</summary>
    /// <param name="run">The run's number.</param>
    /// <param name="change">Changes the rows and says what to log.</param>
    private WriteOutcome Commit(int run, Func<LoggedRun, List<FileRow>, List<LogRecord>> change)
    {
        if (Looked(() => Run(run)) is not (var found, null))
        {
            return new WriteOutcome.NotSaved(_fault!);
        }

        var logged = found ?? throw new ArgumentOutOfRangeException(nameof(run), run, "the log has no such run");
        var rows = logged.File.Contents().ToList();
        var records = change(logged, rows);
        if (records[0] is LogRecord.RowVoided voided && logged.File.Contents().ElementAt(logged.Rows.IndexOf(voided.Row)).Void is { } earlier)
        {
            return new WriteOutcome.NotSaved($"that row is void already: {earlier}");
        }

        return RowAppender.Fault(logged.File.Run, rows) is { } fault ? new WriteOutcome.NotSaved(fault) : Commit(records);
    }

    /// <summary>Looks something up before anything is written; a query copy that fails is let go.</summary>
    private (T? Found, string? Fault) Looked<T>(Func<T> look)
    {
        if (_fault is not null)
        {
            return (default, _fault);
        }

        try
        {
            return (look(), null);
        }
        catch (Exception e) when (e is not (OutOfMemoryException or ArgumentException))
        {
            // LiteDB throws exceptions of many types, and its instance is of no use after any of them.
            _fault = OneLine.Of($"the query copy failed, nothing was saved; close the log and open it again ({e.Message})");
            CloseCopy();
            return (default, _fault);
        }
    }

    private WriteOutcome Commit(List<LogRecord> records) => Commit(records, records.Count, CancellationToken.None);

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

        var at = LogOpening.Stamp(_clock);
        try
        {
            journal.Append(records, count, at, stop);
        }
        catch (InvalidDataException e)
        {
            return new WriteOutcome.NotSaved($"it can't be logged: {e.Message}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            var state = journal.IsBroken ? "it is not acknowledged, and the next start may find it or not" : "it is not in the log";
            return new WriteOutcome.NotSaved(OneLine.Of($"{_place.Journal} could not be written, {state}: {e.Message}"));
        }

        try
        {
            foreach (var record in records)
            {
                Copy.Apply(record with { At = at });
            }

            Copy.Flush();
            return new WriteOutcome.Saved();
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // LiteDB throws exceptions of many types, and its instance is of no use after any of them.
            _fault = "the query copy failed; close the log and open it again";
            CloseCopy();
            return new WriteOutcome.SavedOnly(OneLine.Of($"saved; the query copy is repaired at the next start ({e.Message})"));
        }
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
            CopyBuilder.SealUp(_place, scan);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Without a seal the next start makes the query copy anew, which loses nothing.
        }
    }
}
