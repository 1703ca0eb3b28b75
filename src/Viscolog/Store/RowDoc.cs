using LiteDB;
using Viscolog.RunFiles;

namespace Viscolog.Store;

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

    /// <summary>The dose in the pot of each thickener after the row, in g per 100 g of base.</summary>
    public Dictionary<string, double> DosesPct { get; init; } = [];

    /// <summary>The row as it counts now.</summary>
    public FileRow Row() => Is with { Void = Is.Void ?? Voided };

    /// <summary>The row's number in its run.</summary>
    public int Number() => (int)(Id & uint.MaxValue);

    /// <summary>The id of a run's row.</summary>
    public static long IdOf(int run, int row) => ((long)run << 32) | (uint)row;

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
