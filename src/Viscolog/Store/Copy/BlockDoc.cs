using System.Text;
using Viscolog.RunFiles;

namespace Viscolog.Store.Copy;

/// <summary>Rows of a long run that follow one another, as one document: a million of them apart take LiteDB ten times as long.</summary>
internal sealed record BlockDoc
{
    /// <summary>Rows in a block.</summary>
    public const int Length = 250;

    /// <summary>The id of the first of them (<see cref="RowDoc.IdOf"/>).</summary>
    public long Id { get; init; }

    /// <summary>How many they are.</summary>
    public int Count { get; init; }

    /// <summary>What they say, a line each, as in the journal.</summary>
    public string Lines { get; init; } = "";

    /// <summary>Whether a row stands in it.</summary>
    public bool Holds(long id) => Id <= id && id < Id + Count;

    /// <summary>Parts rows into blocks and those that stay apart; a block's rows belong to one run and follow one another.</summary>
    public static (List<BlockDoc> Blocks, List<RowDoc> Apart) Part(List<RowDoc> rows)
    {
        var (blocks, apart) = (new List<BlockDoc>(), new List<RowDoc>());
        for (var i = 0; i < rows.Count;)
        {
            var length = 0;
            while (
                length < Length
                    && i + length < rows.Count
                    && rows[i + length] is { After: null, Voided: null } row
                    && row.Id == rows[i].Id + length)
            {
                length++;
            }

            if (length == Length)
            {
                blocks.Add(Of(rows.GetRange(i, length)));
                i += length;
            }
            else
            {
                apart.AddRange(rows.GetRange(i, Math.Max(1, length)));
                i += Math.Max(1, length);
            }
        }

        return (blocks, apart);
    }

    /// <summary>The rows, without their doses.</summary>
    /// <exception cref="InvalidDataException">It does not hold what it says.</exception>
    public IEnumerable<RowDoc> Rows()
    {
        var rows = Lines.Split('\n');
        return rows.Length == Count
            ? rows.Select((row, i) => new RowDoc { Id = Id + i, Is = RowJson.Read(Encoding.UTF8.GetBytes(row)), DosesPct = null })
            : throw new InvalidDataException(
                FormattableString.Invariant($"the query copy has {rows.Length} of {Count} rows of a block; 'viscolog verify' rebuilds it"));
    }

    private static BlockDoc Of(List<RowDoc> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows)
        {
            text.Append(text.Length == 0 ? "" : "\n")
                .Append(row.Json is { } json ? Encoding.UTF8.GetString(json.Span) : RowJson.Text(row.Is));
        }

        return new() { Id = rows[0].Id, Count = rows.Count, Lines = text.ToString() };
    }
}
