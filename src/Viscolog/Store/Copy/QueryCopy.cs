using LiteDB;
using Viscolog.Core.Pots;
using Viscolog.MaterialFiles;
using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store.Copy;

/// <summary>The query copy: the journal's records as documents that can be looked up. LiteDB's types end here.</summary>
internal sealed class QueryCopy : IDisposable
{
    private const int Pending = 2_500;
    private const int BlocksAtOnce = 16;

    private static readonly string[] Collections = ["runs", "materials", "oils"];

    private readonly LiteDatabase _database;
    private readonly ILiteCollection<RunDoc> _runs;
    private readonly ILiteCollection<RowDoc> _rows;
    private readonly ILiteCollection<BlockDoc> _blocks;
    private readonly ILiteCollection<CellsDoc> _materials;
    private readonly ILiteCollection<CellsDoc> _oils;

    private readonly Dictionary<int, RunState> _touched = [];
    private readonly List<RowDoc> _newRows = [];

    // The run of the last flush, where it was the only one: the bench adds row after row to one.
    private RunState? _last;

    // Numbers of the runs that were stated since the last flush, by UUID.
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private string _at = "";
    private int? _runCount;

    public QueryCopy(LiteDatabase database)
    {
        _database = database;
        _runs = database.GetCollection<RunDoc>("runs");
        _rows = database.GetCollection<RowDoc>("rows", BsonAutoId.Int64);
        _blocks = database.GetCollection<BlockDoc>("blocks", BsonAutoId.Int64);
        _materials = database.GetCollection<CellsDoc>("materials");
        _oils = database.GetCollection<CellsDoc>("oils");
    }

    /// <summary>An empty one, with its indexes.</summary>
    public static QueryCopy Create(LiteDatabase empty)
    {
        var copy = new QueryCopy(empty);
        copy._runs.EnsureIndex(r => r.Uuid, unique: true);
        copy._runs.EnsureIndex(r => r.Key);
        copy._runs.EnsureIndex("pairs", BsonExpression.Create("$.pairs[*]"));
        return copy;
    }

    /// <summary>Sees that records can be applied, before they are written anywhere.</summary>
    /// <param name="records">What is to be logged. What stands behind a run's header was made to fit the run and is not looked at.</param>
    /// <exception cref="MisfitException">One can't be applied.</exception>
    public void Check(IEnumerable<LogRecord> records)
    {
        foreach (var stated in records.TakeWhile(r => r is LogRecord.RunStated).Cast<LogRecord.RunStated>())
        {
            Stated(stated);
        }
    }

    /// <summary>Applies a record; what it says can be looked up after <see cref="Flush"/>.</summary>
    /// <exception cref="MisfitException">A record does not fit what stands before it; nothing of it was applied.</exception>
    /// <exception cref="FormatException">What it says can't be understood.</exception>
    public void Apply(LogRecord record)
    {
        _at = record.At is null || record.At == _at || FileTime.TryParse(record.At, out _)
            ? record.At ?? _at
            : throw new FormatException($"it was logged at {OneLine.Quoted(record.At)}, which is no time");
        switch (record)
        {
            case LogRecord.RunStated stated:
                State(stated);
                break;
            case LogRecord.RowAdded added:
                Add(added);
                break;
            case LogRecord.RowVoided voided:
                Void(voided);
                break;
            case LogRecord.VoidLifted lifted:
                FlushRows();
                _rows.Update(StateOf(lifted.Run).Lift(RowOf(lifted.Run, lifted.Row, "lifted"), _at));
                break;
            case LogRecord.ClockSet clock:
                StateOf(clock.Run).Set(clock, _at);
                break;
            case LogRecord.RunArchived archived:
                StateOf(archived.Run).Archive(archived.Is, _at);
                break;
            case LogRecord.RunHanded handed:
                StateOf(handed.Run).Hand(handed.To, _at);
                break;
            case LogRecord.MaterialStated { Is: var material }:
                StoredCells.Material(material);
                _materials.Upsert(CellsDoc.Of(IdOf(material), material.Cells, _at) with { Kind = material.Kind, Name = material.Name });
                break;
            case LogRecord.OilRead oil:
                Require(oil.Oil == _oils.Count() + 1, $"oil reading {oil.Oil} is added before oil reading {oil.Oil - 1}");
                StoredCells.Oil(oil.Oil, oil.Is);
                _oils.Insert(CellsDoc.Of(oil.Oil, oil.Is, _at));
                break;
            case LogRecord.OilVoided oil:
                var known = Found(_oils.FindById(oil.Oil), $"oil reading {oil.Oil} is voided, but was never added");
                _oils.Update(known with { Voided = oil.Reason, Last = _at });
                break;
            case LogRecord.Begun or LogRecord.BatchBegun or LogRecord.BatchEnded:
                break;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    /// <summary>Writes what the applied records say.</summary>
    public void Flush()
    {
        FlushRows();
        foreach (var touched in _touched.Values)
        {
            if (touched.IsReordered)
            {
                _rows.Update(Redosed(touched));
            }

            _runs.Upsert(touched.Doc);
        }

        _last = _touched.Count == 1 && _touched.Values.Single() is { IsReordered: false } state ? state : null;
        _touched.Clear();
        _numbers.Clear();
    }

    private IReadOnlyList<RowDoc> Redosed(RunState state)
    {
        try
        {
            return state.Redosed(RowsOf(state.Doc.Id));
        }
        catch (ArgumentException e)
        {
            // As when more is taken out than the pot holds, once a row before is void.
            throw new InvalidDataException(
                FormattableString.Invariant($"the lines of run {state.Doc.Id} do not fit together: {e.Message}"), e);
        }
    }

    /// <summary>The records that make the copy, in batches with their times; the inverse of <see cref="Apply"/>.</summary>
    public IEnumerable<(IReadOnlyList<LogRecord> Records, string At)> Batches()
        => _runs.FindAll().OrderBy(r => r.Id).Select(r => ((IReadOnlyList<LogRecord>)[.. r.Records(RowsOf(r.Id))], r.Last))
            .Concat(_materials.FindAll().Concat(OilDocs()).Select(d => (d.Records(), d.Last)));

    /// <summary>How many batches that are.</summary>
    public int BatchCount() => _runs.Count() + _materials.Count() + _oils.Count();

    public LoggedRun? Run(int number) => _runs.FindById(number) is { } doc ? Whole(doc) : null;

    public LoggedRun? Run(Guid id) => _runs.FindOne(r => r.Uuid == id.ToString()) is { } doc ? Whole(doc) : null;

    /// <summary>A run by number or UUID without its rows in memory; null where there is none.</summary>
    public StreamedRun? Streamed(int? number, Guid? id)
    {
        var doc = number is { } n ? _runs.FindById(n) : id is { } uuid ? _runs.FindOne(r => r.Uuid == uuid.ToString()) : null;
        return doc?.Streamed(RowsOf(doc.Id));
    }

    /// <summary>Whether there is a run of that UUID.</summary>
    public bool Has(Guid id) => NumberOf(id) is not null;

    /// <summary>The runs that a file without a UUID may be (<see cref="RunIdentity.Key"/>), by number.</summary>
    public IEnumerable<StreamedRun> RunsByKey(string key)
    {
        var sought = RunDoc.KeyOf(key);
        return _runs.Find(r => r.Key == sought).OrderBy(r => r.Id).ToList().Select(d => d.Streamed(RowsOf(d.Id)));
    }

    /// <summary>The latest runs with a base and any of these thickeners, by number.</summary>
    /// <param name="run">The run with the base and the thickeners.</param>
    /// <param name="before">Only runs with a smaller number; null for all.</param>
    /// <param name="most">How many at most.</param>
    public IEnumerable<LoggedRun> Earlier(Run run, int? before, int most)
    {
        var docs = run.Base.Name is { } name ? run.Thickeners.SelectMany(t => RunsByPair(RunDoc.PairOf(name, t.Name))) : [];
        return docs.DistinctBy(d => d.Id).Where(d => before is null || d.Id < before).OrderBy(d => d.Id).TakeLast(most).Select(Whole);
    }

    public IReadOnlyList<RunSummary> Runs() => [.. _runs.FindAll().Select(r => r.Summary())];

    public int RunCount() => _runCount ??= _runs.Count();

    /// <summary>Runs and rows, counted in the file.</summary>
    public (int Runs, long Rows) Counted() => (_runs.Count(), _rows.LongCount() + _blocks.FindAll().Sum(b => (long)b.Count));

    /// <summary>Materials, by kind and name.</summary>
    public IReadOnlyList<MaterialRow> Materials() => [.. _materials.FindAll().Select(m => StoredCells.Material(m.Material()))];

    /// <summary>Whether a material is there just as it is.</summary>
    public bool Has(MaterialContent material)
        => _materials.FindById(IdOf(material)) is { } known && known.Cells.Count == material.Cells.Count
            && known.Cells.All(c => material.Cells.TryGetValue(c.Key, out var text) && text == c.Value);

    /// <summary>Readings of certified oils, by number.</summary>
    public IReadOnlyList<LoggedOil> Oils() => [.. OilDocs().Select(o => o.Oil())];

    /// <summary>
    /// Everything as text, in one order, with the doses of each row that states them apart: two copies of one journal give the same,
    /// whichever rows they hold in blocks.
    /// </summary>
    public IEnumerable<(string Text, string? Doses)> Everything()
    {
        var whole = Collections.SelectMany(
            name => _database.GetCollection(name).FindAll().Select(d => (name + " " + JsonSerializer.Serialize(d), (string?)null)));
        return whole.Concat(Stored(0, long.MaxValue).Select(Whole));
    }

    private (string Text, string? Doses) Whole(RowDoc row)
    {
        var text = FormattableString.Invariant($"row {row.Id} {row.After} {RowJson.Text(row.Is)} {row.Voided}");
        return (text, row.DosesPct is null ? null : JsonSerializer.Serialize(_database.Mapper.Serialize(row.DosesPct)));
    }

    /// <inheritdoc/>
    public void Dispose() => _database.Dispose();

    private static string IdOf(MaterialContent material) => RunDoc.KeyOf($"{material.Kind} {material.Name}");

    private static void Require(bool fits, FormattableString otherwise)
    {
        if (!fits)
        {
            throw new MisfitException(FormattableString.Invariant(otherwise));
        }
    }

    private static T Found<T>(T? found, FormattableString otherwise)
    {
        Require(found is not null, otherwise);
        return found!;
    }

    private List<RunDoc> RunsByPair(string pair) => _runs.Query().Where("pairs[*] ANY = @0", pair).ToList();

    private IEnumerable<CellsDoc> OilDocs() => _oils.FindAll().OrderBy(o => o.Id.AsInt32);

    private LoggedRun Whole(RunDoc doc) => doc.With([.. RowsOf(doc.Id)]);

    /// <summary>A run's rows in the order in which things happened; only those that were put between others are held in memory.</summary>
    public IEnumerable<RowDoc> RowsOf(int run)
    {
        var (first, last) = (RowDoc.IdOf(run, 0), RowDoc.IdOf(run, int.MaxValue));
        var between = Slices(_rows, r => r.Id, first, last, BlockDoc.Length).Where(r => r.After is not null).ToLookup(r => r.After!.Value);
        foreach (var row in Behind(0, between))
        {
            yield return row;
        }

        foreach (var row in Stored(first, last).Where(r => r.After is null))
        {
            yield return row;
            foreach (var behind in between.Count == 0 ? [] : Behind(row.Number(), between))
            {
                yield return behind;
            }
        }
    }

    /// <summary>The rows that were put behind a row, the latest first, each with those that were put behind it.</summary>
    private static IEnumerable<RowDoc> Behind(int row, ILookup<int, RowDoc> between)
    {
        var open = new Stack<RowDoc>(between[row]);
        while (open.TryPop(out var next))
        {
            yield return next;
            foreach (var behind in between[next.Number()])
            {
                open.Push(behind);
            }
        }
    }

    /// <summary>The rows of these ids, from blocks or not, by id.</summary>
    private IEnumerable<RowDoc> Stored(long first, long last)
    {
        using var blocks = Slices(_blocks, b => b.Id, first, last, BlocksAtOnce).GetEnumerator();
        var block = blocks.MoveNext() ? blocks.Current : null;
        foreach (var row in Slices(_rows, r => r.Id, first, last, BlockDoc.Length).Append(null))
        {
            while (block is not null && (row is null || block.Id < row.Id))
            {
                foreach (var inside in block.Rows())
                {
                    yield return inside;
                }

                block = blocks.MoveNext() ? blocks.Current : null;
            }

            if (row is not null)
            {
                yield return row;
            }
        }
    }

    /// <summary>Documents by id, some at a time: LiteDB keeps every page that an open query has seen.</summary>
    private static IEnumerable<T> Slices<T>(ILiteCollection<T> of, Func<T, long> id, long first, long last, int most)
    {
        List<T> slice;
        do
        {
            slice = of.Query().Where("_id BETWEEN @0 AND @1", first, last).Limit(most).ToList();
            foreach (var document in slice)
            {
                yield return document;
            }

            FlatMemory.Keep();
            first = slice.Count > 0 ? id(slice[^1]) + 1 : first;
        }
        while (slice.Count == most);
    }

    /// <summary>A row by its id, taken out of its block where it stands in one; null where there is none.</summary>
    private RowDoc? Apart(long id)
    {
        if (_rows.FindById(id) is { } row)
        {
            return row;
        }

        var block = _blocks.Query().Where("_id BETWEEN @0 AND @1", id - BlockDoc.Length + 1, id).ToList().Find(b => b.Holds(id));
        if (block is null)
        {
            return null;
        }

        RowDoc[] rows = [.. block.Rows().Select(r => r with { DosesPct = [] })];
        _blocks.Delete(block.Id);
        _rows.Insert(rows);
        return Array.Find(rows, r => r.Id == id);
    }

    private void State(LogRecord.RunStated stated)
    {
        var state = Stated(stated);
        _runCount = Math.Max(RunCount(), stated.Run);
        _numbers[state.Doc.Uuid] = stated.Run;
        _touched[stated.Run] = state;
    }

    /// <summary>The run with a header, new or stated anew; nothing is changed yet.</summary>
    private RunState Stated(LogRecord.RunStated stated)
    {
        var before = stated.Run <= RunCount() ? StateOf(stated.Run) : null;
        Require(before is not null || stated.Run == RunCount() + 1, $"run {stated.Run} is stated before run {stated.Run - 1}");
        var state = RunState.Stated(stated, before, _at);
        var twin = NumberOf(stated.Id);
        Require(before is null ? twin is null : twin == stated.Run, $"run {stated.Run} is stated with the UUID of run {twin}");
        var length = state.Doc.TooLong(_database.Mapper);
        Require(
            length is null,
            $"the headers of run {stated.Run} would take {length} bytes all together, {RunDoc.MostBytes} is the most");
        return state;
    }

    private int? NumberOf(Guid id)
        => _numbers.TryGetValue(id.ToString(), out var number) ? number : _runs.FindOne(r => r.Uuid == id.ToString())?.Id;

    private void Add(LogRecord.RowAdded added)
    {
        _newRows.Add(StateOf(added.Run).Add(added, _at));
        if (_newRows.Count >= Pending)
        {
            FlushRows();
        }
    }

    private void Void(LogRecord.RowVoided voided)
    {
        FlushRows();
        _rows.Update(StateOf(voided.Run).Void(RowOf(voided.Run, voided.Row, "voided"), voided.Reason, _at));
    }

    private RowDoc RowOf(int run, int row, string what)
        => Found(Apart(RowDoc.IdOf(run, row)), $"row {row} of run {run} is {what}, but was never added");

    private void FlushRows()
    {
        if (_newRows.Count > 0)
        {
            var (blocks, apart) = BlockDoc.Part(_newRows);
            if (blocks.Count > 0)
            {
                _blocks.Insert(blocks);
            }

            _rows.Insert(apart);
            _newRows.Clear();
            FlatMemory.Keep();
        }
    }

    private RunState StateOf(int run)
    {
        if (!_touched.TryGetValue(run, out var state))
        {
            var doc = Found(_runs.FindById(run), $"run {run} was never stated");
            _touched[run] = state = _last?.Doc.Id == run ? _last : RunState.Of(doc, RowsOf(run));
        }

        return state;
    }
}
