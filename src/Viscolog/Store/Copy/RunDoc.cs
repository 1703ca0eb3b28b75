using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using LiteDB;
using Viscolog.RunFiles;
using Viscolog.Store.Journal;

namespace Viscolog.Store.Copy;

/// <summary>A run in the query copy. Fields are stored in the order in which they stand here.</summary>
internal sealed record RunDoc
{
    /// <summary>LiteDB's largest document, in bytes.</summary>
    public const int MostBytes = 16_683_050;

    private const int LongestKey = 250;

    /// <summary>The run's number, from 1.</summary>
    public int Id { get; init; }

    /// <summary>The run's UUID.</summary>
    public string Uuid { get; init; } = "";

    /// <summary>What runs from files without a UUID are told apart by (<see cref="RunIdentity.Key"/>).</summary>
    public string Key { get; init; } = "";

    public string? Name { get; init; }

    public string? Base { get; init; }

    public string[] Thickeners { get; init; } = [];

    /// <summary>The base with each thickener, to find runs by.</summary>
    public string[] Pairs { get; init; } = [];

    /// <summary>The header in force, lines as in a run file.</summary>
    public string[] Header { get; init; } = [];

    /// <summary>Headers that were in force before, each as one text.</summary>
    public string[] Earlier { get; init; } = [];

    /// <summary>Names of the unknown columns.</summary>
    public string[] Columns { get; init; } = [];

    /// <summary>Rows, void ones included.</summary>
    public int Rows { get; init; }

    /// <summary>Rows that are void.</summary>
    public int Voided { get; init; }

    /// <summary>Rows that hold a reading and count.</summary>
    public int Readings { get; init; }

    /// <summary>When the last thing happened to it or was logged, ISO 8601.</summary>
    public string Last { get; init; } = "";

    /// <summary>When stirring of the last step began, ISO 8601; null where it has not.</summary>
    public string? StirBegan { get; init; }

    /// <summary>When it ended and standing began, ISO 8601; null where it has not.</summary>
    public string? StirEnded { get; init; }

    /// <summary>When the run was put away from the list, ISO 8601; null where it is in it.</summary>
    public string? Archived { get; init; }

    /// <summary>The UUID of the log that the run was handed to; null where it is this one's.</summary>
    public string? Handed { get; init; }

    /// <summary>A text as a key of an index, which takes no more than 1023 bytes: a long one as its beginning and SHA-256.</summary>
    public static string KeyOf(string text) => text.Length <= LongestKey
        ? text
        : $"{text[..100]}\u001f{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}";

    /// <summary>A base with a thickener, to find runs by.</summary>
    public static string PairOf(string? @base, string thickener) => KeyOf($"{@base}\u001f{thickener}");

    /// <summary>Its bytes as a document where these are more than LiteDB takes; null where it fits.</summary>
    public int? TooLong(BsonMapper mapper)
    {
        // Hardly any run comes near, and counting exactly takes time.
        var texts = Header.Sum(Least) + Earlier.Sum(Least) + Columns.Sum(Least) + Pairs.Sum(Least) + Thickeners.Sum(Least);
        return texts > MostBytes / 8 && BsonSerializer.Serialize(mapper.ToDocument(this)).Length is > MostBytes and var length
            ? length
            : null;
    }

    private static long Least(string text) => 4 + text.Length;

    /// <summary>What a list says of the run.</summary>
    public RunSummary Summary() => new(
        Id, Guid.Parse(Uuid), HeaderText.Read(Header).Run, Rows, Voided, Readings,
        FileTime.TryParse(Last, out var time) ? time : throw new FormatException($"'{Last}' is no time"))
    {
        IsArchived = Archived is not null,
        HandedTo = HandedTo,
    };

    /// <summary>The run with its rows.</summary>
    /// <exception cref="InvalidDataException">Rows are missing.</exception>
    public LoggedRun With(IReadOnlyList<RowDoc> rows)
    {
        Require(rows.Count);
        return new(Id, FileWithoutRows().With(rows.Select(r => r.Row())), [.. rows.Select(r => r.Number())])
        {
            Headers = [.. Earlier, string.Join('\n', Header)],
            Lifted = rows.Where(r => r.Lifted is not null).ToImmutableDictionary(r => r.Number(), r => r.Lifted!.ToImmutableArray()),
            Clock = new(TimeOf(StirBegan), TimeOf(StirEnded)),
            Last = TimeOf(Last) ?? default,
            HandedTo = HandedTo,
        };
    }

    /// <summary>The run with rows that are gone through one by one.</summary>
    /// <param name="rows">Its rows, each time anew.</param>
    public StreamedRun Streamed(IEnumerable<RowDoc> rows)
        => new(Id, FileWithoutRows(), Rows, Counted(rows))
        {
            Headers = [.. Earlier, string.Join('\n', Header)],
            HandedTo = HandedTo,
        };

    private Guid? HandedTo => Handed is null ? null : Guid.Parse(Handed);

    private IEnumerable<LoggedRow> Counted(IEnumerable<RowDoc> rows)
    {
        var count = 0;
        foreach (var row in rows)
        {
            count++;
            yield return new(row.Number(), row.Row(), row.Lifted);
        }

        Require(count);
    }

    private void Require(int rows)
    {
        if (rows != Rows)
        {
            throw new InvalidDataException(FormattableString.Invariant(
                $"the query copy has {rows} of the {Rows} rows of run {Id}; 'viscolog verify' rebuilds it"));
        }
    }

    private static DateTimeOffset? TimeOf(string? text) => text is not null && FileTime.TryParse(text, out var time) ? time : null;

    /// <summary>The run as a file without rows.</summary>
    public RunFile FileWithoutRows() => HeaderText.Read(Header) with { Id = Guid.Parse(Uuid), UnknownColumns = [.. Columns] };

    /// <summary>The records that make it.</summary>
    public IEnumerable<LogRecord> Records(IEnumerable<RowDoc> rows)
    {
        var headers = Earlier.Select(h => h.Split('\n')).Append(Header);
        var columns = Columns.Length == 0 ? null : Columns;
        return headers.Select(LogRecord (h) => new LogRecord.RunStated(Id, Guid.Parse(Uuid), h, columns))
            .Concat(rows.OrderBy(r => r.Id).SelectMany(r => r.Records(Id)))
            .Concat(StirBegan is null ? [] : [new LogRecord.ClockSet(Id, StirBegan, StirEnded)])
            .Concat(Archived is null ? [] : [new LogRecord.RunArchived(Id, true)])
            .Concat(HandedTo is null ? [] : [new LogRecord.RunHanded(Id, HandedTo)]);
    }
}

/// <summary>A row in the query copy.</summary>
internal sealed record RowDoc
{
    /// <summary>The run's number in the high half, the row's in the low half: a run's rows lie together.</summary>
    public long Id { get; init; }

    /// <summary>The row that it follows; null where it follows the one logged before.</summary>
    public int? After { get; init; }

    /// <summary>What it says.</summary>
    public FileRow Is { get; init; } = new();

    /// <summary>Why it counts no more, where that was logged after it.</summary>
    public string? Voided { get; init; }

    /// <summary>Why it was void before that was lifted, the earliest first; null where nothing was.</summary>
    public string[]? Lifted { get; init; }

    /// <summary>
    /// The dose in the pot of each thickener after the row, in g per 100 g of base; null for a row of a block, which has none.
    /// </summary>
    public Dictionary<string, double>? DosesPct { get; init; } = [];

    /// <summary>What it says as JSON, where that is at hand; not stored.</summary>
    [BsonIgnore]
    public ReadOnlyMemory<byte>? Json { get; init; }

    /// <summary>The id of a run's row.</summary>
    public static long IdOf(int run, int row) => ((long)run << 32) | (uint)row;

    /// <summary>The row as it counts now.</summary>
    public FileRow Row() => Voided is null && Lifted is null ? Is : Is with { Void = Voided };

    /// <summary>The row's number in its run.</summary>
    public int Number() => (int)(Id & uint.MaxValue);

    /// <summary>The records that make it.</summary>
    public IEnumerable<LogRecord> Records(int run) =>
    [
        new LogRecord.RowAdded(run, Number(), Is, After),
        .. (Lifted ?? []).SelectMany((reason, i) => Lift(run, reason, isVoid: i == 0 && Is.Void is not null)),
        .. Voided is { } reason ? new[] { new LogRecord.RowVoided(run, Number(), reason) } : [],
    ];

    private IEnumerable<LogRecord> Lift(int run, string reason, bool isVoid)
        => isVoid
            ? [new LogRecord.VoidLifted(run, Number())]
            : [new LogRecord.RowVoided(run, Number(), reason), new LogRecord.VoidLifted(run, Number())];

    /// <summary>What a row says as a document: a field for each column in which something stands, as in the journal.</summary>
    public static BsonDocument ToBson(FileRow row)
    {
        var document = new BsonDocument();
        foreach (var column in Columns.All)
        {
            if (column.Of(row) is { } held)
            {
                document[column.Name] = new BsonValue(held);
            }
        }

        if (row.Unknown.Any(t => t.Length > 0))
        {
            document[FileRowJson.Unknown] = new BsonArray(row.Unknown.Select(t => new BsonValue(t)));
        }

        return document;
    }

    /// <summary>The row of such a document.</summary>
    /// <exception cref="FormatException">It is not what <see cref="ToBson"/> gave.</exception>
    public static FileRow OfBson(BsonValue document)
    {
        var row = new RowDraft();
        foreach (var (name, held) in document.AsDocument)
        {
            if (Columns.ByName.TryGetValue(name, out var column) && column.Restore(row, held.RawValue) is { } expected)
            {
                throw new FormatException($"'{name}' of a row is '{held}', expected {expected}");
            }
        }

        return row.ToRow() with { Unknown = [.. document[FileRowJson.Unknown].AsArray?.Select(t => t.AsString) ?? []] };
    }
}

/// <summary>A material or a reading of a certified oil in the query copy: the cells of its row in a file.</summary>
internal sealed record CellsDoc
{
    /// <summary>Of a material its kind and name, of a reading its number, from 1.</summary>
    public BsonValue Id { get; init; } = BsonValue.Null;

    /// <summary>The kind of a material; null for a reading.</summary>
    public string? Kind { get; init; }

    /// <summary>The name of a material; null for a reading.</summary>
    public string? Name { get; init; }

    /// <summary>The cells that hold something, by column.</summary>
    public Dictionary<string, string> Cells { get; init; } = [];

    /// <summary>Why a reading counts no more; null while it counts.</summary>
    public string? Voided { get; init; }

    /// <summary>When it was last stated, logged or made void, ISO 8601.</summary>
    public string Last { get; init; } = "";

    public static CellsDoc Of(BsonValue id, IReadOnlyDictionary<string, string> cells, string at)
        => new() { Id = id, Cells = new(cells, StringComparer.Ordinal), Last = at };

    /// <summary>The material that it holds.</summary>
    public MaterialContent Material() => new(Kind!, Name!, Cells);

    /// <summary>The reading that it holds.</summary>
    public LoggedOil Oil() => new(Id.AsInt32, StoredCells.Oil(Id.AsInt32, Cells) with { Void = Voided });

    /// <summary>The records that make it.</summary>
    public IReadOnlyList<LogRecord> Records() => Kind is not null
        ? [new LogRecord.MaterialStated(Material())]
        : [new LogRecord.OilRead(Id.AsInt32, Cells), .. Voided is { } reason ? new[] { new LogRecord.OilVoided(Id.AsInt32, reason) } : []];
}
