using System.Globalization;
using Viscolog.Core.Pots;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>Puts rows one after the other into a run; where one can't come next, it says which cell is to blame.</summary>
internal sealed class RowAppender(Run run)
{
    private OpenRun _open = OpenRun.Begin(run);
    private bool _voidBefore;

    /// <summary>What the pot holds now.</summary>
    public Pot Pot => _open.Pot;

    /// <summary>Appends a row; null, or what is wrong with it.</summary>
    public CellFault? Append(FileRow row)
    {
        // A void row stands for nothing any more: the row above may count again.
        var isVoid = !string.IsNullOrWhiteSpace(row.Void);
        if (row.Replaces && !_voidBefore && !isVoid)
        {
            return new(Columns.Replaces, ReplacesExpected);
        }

        _voidBefore = isVoid;
        switch (_open.Append(row.Entries()))
        {
            case Appended.To to:
                _open = to.Run;
                return null;
            case Appended.Refused { Fault: var fault }:
                return Of(fault);
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    /// <summary>What a cell of <see cref="Columns.Replaces"/> may say.</summary>
    public const string ReplacesExpected = $"'{Columns.RowAbove}' in a row that replaces a void row right above it, or an empty cell";

    /// <summary>
    /// Why a run with these rows could not be exported and read again, as a refusal without file and line; null where it can.
    /// </summary>
    public static string? Fault(Run run, IEnumerable<FileRow> rows)
    {
        var appender = new RowAppender(run);
        return rows.Select(appender.Fault).FirstOrDefault(f => f is not null);
    }

    /// <summary>
    /// Appends a row; null, or why a run with it could not be exported and read again, as a refusal without file and line.
    /// </summary>
    public string? Fault(FileRow row)
    {
        if (row.Texts().Any(t => t.Contains('\0', StringComparison.Ordinal)))
        {
            return $"read byte 0x00, expected {TableText.Utf8Expected}";
        }

        return (OutOfRange(row) ?? Append(row)) switch
        {
            null => null,
            { Column: { } column, Expected: var expected }
                => $"{column.Name}: read {OneLine.Quoted(column.Show(row) ?? "")}, expected {expected}",
            { Expected: var expected } => $"read {NothingRead}, expected {expected}",
        };
    }

    /// <summary>What is read where nothing happens in a row.</summary>
    public const string NothingRead = "a row in which nothing happens";

    /// <summary>What is expected there.</summary>
    public const string NothingExpected = "an addition, let-down, water, sample, reading or note; fill the row in or delete it";

    /// <summary>The names of thickeners that a row may say.</summary>
    public static string ThickenerExpected(Run run)
    {
        var names = run.Thickeners.Length == 0 ? "none so far" : string.Join(", ", run.Thickeners.Select(t => t.Name));
        return $"a thickener of the header ({names}), or a header line '# thickener: NAME' for it";
    }

    private static CellFault? OutOfRange(FileRow row)
    {
        foreach (var column in Columns.All)
        {
            if (
                column.Range is { } range
                    && column.Of(row) is { } held
                    && Convert.ToDouble(held, CultureInfo.InvariantCulture) is var number
                    && !range.Allows(number))
            {
                return new(column, range.Words(number));
            }
        }

        return null;
    }

    private CellFault Of(EntryFault fault) => fault switch
    {
        EntryFault.Nothing => new(null, NothingExpected),
        EntryFault.NoSuchThickener => new(Columns.Thickener, ThickenerExpected(run)),
        EntryFault.NotRead read => new(Columns.Of(read.Value.Scale), Columns.NotRead(read.Method)),
        EntryFault.StandsBackwards back => new(Columns.Wait, $"{FileNumbers.Show(back.Earlier)} s or more: the pot keeps standing until "
            + $"something is added"),
        EntryFault.SampleTooLarge large => new(Columns.Taken, $"less than the {FileNumbers.Show(Math.Round(large.Held.Grams, 3))} g in "
            + $"the pot"),
        _ => throw new InvalidOperationException("not a case of the closed set"),
    };
}

/// <summary>What is wrong with a row.</summary>
/// <param name="Column">The column to blame; null where it is the row.</param>
/// <param name="Expected">What ought to stand there.</param>
internal sealed record CellFault(Column? Column, string Expected)
{
    /// <summary>The column that asks for something in an empty cell; null where the cell itself is to blame.</summary>
    public string? Beside { get; init; }
}
