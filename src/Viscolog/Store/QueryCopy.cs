using LiteDB;
using Viscolog.RunFiles;

namespace Viscolog.Store;

/// <summary>The query copy: the journal's records as documents that can be looked up. LiteDB's types end here.</summary>
internal sealed class QueryCopy : IDisposable
{
    private const int Pending = 10_000;

    private static readonly string[] Collections = ["runs", "rows", "materials", "oils"];

    private readonly LiteDatabase _database;
    private readonly ILiteCollection<RunDoc> _runs;
    private readonly ILiteCollection<RowDoc> _rows;
    private readonly ILiteCollection<MaterialDoc> _materials;
    private readonly ILiteCollection<OilDoc> _oils;

    private readonly Dictionary<int, RunState> _touched = [];
    private readonly Dictionary<long, RowDoc> _newRows = [];
    private string _at = "";
    private int? _runCount;

    public QueryCopy(LiteDatabase database)
    {
        _database = database;
        _runs = database.GetCollection<RunDoc>("runs");
        _rows = database.GetCollection<RowDoc>("rows", BsonAutoId.Int64);
        _materials = database.GetCollection<MaterialDoc>("materials");
        _oils = database.GetCollection<OilDoc>("oils");
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

    /// <summary>Takes records in; they can be looked up after <see cref="Flush"/>.</summary>
    /// <exception cref="InvalidDataException">A record does not fit what stands before it.</exception>
    public void Apply(LogRecord record)
    {
        _at = record.At ?? _at;
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
            case LogRecord.MaterialStated material:
                var id = IdOf(material.Is.Kind, material.Is.Name);
                _materials.Upsert(new MaterialDoc { Id = id, Kind = material.Is.Kind, Name = material.Is.Name, Cells = new(material.Is.Cells, StringComparer.Ordinal), Last = _at });
                break;
            case LogRecord.OilRead oil:
                Add(oil);
                break;
            case LogRecord.OilVoided oil:
                var known = _oils.FindById(oil.Oil) ?? throw new InvalidDataException(FormattableString.Invariant($"oil reading {oil.Oil} is voided, but was never added"));
                _oils.Update(known with { Voided = oil.Reason, Last = _at });
                break;
            case LogRecord.Begun or LogRecord.BatchBegun or LogRecord.BatchEnded:
                break;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    /// <summary>Writes what was taken in.</summary>
    public void Flush()
    {
        FlushRows();
        foreach (var state in _touched.Values)
        {
            if (state.IsReordered)
            {
                _rows.Update(state.Redosed(RowsOf(state.Doc.Id)));
            }

            _runs.Upsert(state.Doc);
        }

        _touched.Clear();
    }

    public RunDoc? Run(int number) => _runs.FindById(number);

    public RunDoc? Run(Guid id) => _runs.FindOne(r => r.Uuid == id.ToString());

    public IReadOnlyList<RunDoc> RunsByKey(string key)
    {
        var sought = IndexKey.Of(key);
        return [.. _runs.Find(r => r.Key == sought).OrderBy(r => r.Id)];
    }

    public IReadOnlyList<RunDoc> RunsByPair(string pair) => [.. _runs.Query().Where("pairs[*] ANY = @0", pair).ToList().OrderBy(r => r.Id)];

    public IReadOnlyList<RunDoc> Runs() => [.. _runs.FindAll()];

    public int RunCount() => _runCount ??= _runs.Count();

    /// <summary>Runs and rows, counted in the file.</summary>
    public (int Runs, long Rows) Counted() => (_runs.Count(), _rows.LongCount());

    /// <summary>A run's rows in the order in which things happened.</summary>
    public IReadOnlyList<RowDoc> RowsOf(int run)
    {
        var rows = new List<RowDoc>();
        foreach (var row in _rows.Query().Where("_id BETWEEN @0 AND @1", RowDoc.IdOf(run, 0), RowDoc.IdOf(run, int.MaxValue)).ToEnumerable())
        {
            if (row.After is { } after)
            {
                rows.Insert(1 + rows.FindLastIndex(r => r.Number() == after), row);
            }
            else
            {
                rows.Add(row);
            }
        }

        return rows;
    }

    public MaterialDoc? Material(string kind, string name) => _materials.FindById(IdOf(kind, name));

    public IReadOnlyList<MaterialDoc> Materials() => [.. _materials.FindAll()];

    /// <summary>Readings of certified oils, by number.</summary>
    public IReadOnlyList<OilDoc> Oils() => [.. _oils.FindAll().OrderBy(o => o.Id)];

    /// <summary>Everything as text, in one order: two copies of one journal give the same lines.</summary>
    public IEnumerable<string> Everything()
        => Collections.SelectMany(name => _database.GetCollection(name).FindAll().Select(d => name + " " + LiteDB.JsonSerializer.Serialize(d)));

    /// <inheritdoc/>
    public void Dispose() => _database.Dispose();

    private static string IdOf(string kind, string name) => IndexKey.Of($"{kind} {name}");

    private void State(LogRecord.RunStated stated)
    {
        var file = HeaderText.Read(stated.Header);
        _runCount ??= _runs.Count();
        var before = stated.Run <= _runCount ? StateOf(stated.Run) : null;
        if (before is null && stated.Run != ++_runCount)
        {
            throw new InvalidDataException(FormattableString.Invariant($"run {stated.Run} is stated before run {stated.Run - 1}"));
        }

        _touched[stated.Run] = RunState.Stated(stated, file, before, _at);
    }

    private void Add(LogRecord.RowAdded added)
    {
        var state = StateOf(added.Run);
        var doc = state.Add(added, _at);
        _newRows.Add(doc.Id, doc);
        if (_newRows.Count >= Pending)
        {
            FlushRows();
        }
    }

    private void Add(LogRecord.OilRead oil)
    {
        if (oil.Oil != _oils.Count() + 1)
        {
            throw new InvalidDataException(FormattableString.Invariant($"oil reading {oil.Oil} is added before oil reading {oil.Oil - 1}"));
        }

        _oils.Insert(new OilDoc { Id = oil.Oil, Cells = new(oil.Is, StringComparer.Ordinal), Last = _at });
    }

    private void Void(LogRecord.RowVoided voided)
    {
        var id = RowDoc.IdOf(voided.Run, voided.Row);
        var isNew = _newRows.TryGetValue(id, out var doc);
        doc ??= _rows.FindById(id) ?? throw new InvalidDataException(FormattableString.Invariant($"row {voided.Row} of run {voided.Run} is voided, but was never added"));
        doc = StateOf(voided.Run).Void(doc, voided.Reason, _at);
        if (isNew)
        {
            _newRows[id] = doc;
        }
        else
        {
            _rows.Update(doc);
        }
    }

    private void FlushRows()
    {
        if (_newRows.Count > 0)
        {
            _rows.Insert(_newRows.Values);
            _newRows.Clear();
        }
    }

    private RunState StateOf(int run)
    {
        if (!_touched.TryGetValue(run, out var state))
        {
            var doc = _runs.FindById(run) ?? throw new InvalidDataException(FormattableString.Invariant($"run {run} was never stated"));
            _touched[run] = state = RunState.Of(doc, RowsOf(run));
        }

        return state;
    }
}
