using System.Globalization;
using System.Xml;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Viscolog.Sheets;

/// <summary>Reads the first sheet of a workbook (Office Open XML, ECMA-376), row by row, within bounds.</summary>
internal static class WorkbookReader
{
    /// <summary>The most bytes that a workbook may unpack to.</summary>
    public const long MostUnpacked = 1L << 29;

    /// <summary>The most columns that are read.</summary>
    public const int MostColumns = 1 << 14;

    /// <summary>The most cells of a sheet, the empty ones before others in their row counted as well.</summary>
    public const int MostCells = 20_000_000;

    /// <summary>The most parts of a package.</summary>
    private const int MostParts = 10_000;

    /// <summary>How a zip begins; a workbook is one.</summary>
    public static ReadOnlySpan<byte> Mark => "PK\u0003\u0004"u8;

    /// <summary>The rows in which something stands, each with its number from 1 and its cells as texts; or why there are none.</summary>
    /// <param name="bytes">All of the file.</param>
    /// <param name="most">The most rows that are asked for.</param>
    public static (List<SheetRow>? Rows, string? Trouble) Read(ReadOnlyMemory<byte> bytes, int most = int.MaxValue)
    {
        try
        {
            using var stream = new MemoryStream(bytes.ToArray(), writable: false);
            return Packing.Trouble(stream, MostParts, MostUnpacked) is { } trouble ? (null, trouble) : Rows(stream, most);
        }
        catch (Exception e) when (IsDamage(e))
        {
            return (null, "a damaged workbook");
        }
    }

    // What a library of parsers throws at a package that somebody made up can't be told beforehand.
    private static bool IsDamage(Exception e)
        => e is OpenXmlPackageException or FileFormatException or InvalidDataException or XmlException or IOException or FormatException
            or InvalidOperationException or ArgumentException or NotSupportedException or OverflowException or KeyNotFoundException
            or NullReferenceException or UriFormatException;

    private static (List<SheetRow>? Rows, string? Trouble) Rows(Stream stream, int most)
    {
        using var document = SpreadsheetDocument.Open(stream, isEditable: false);
        var book = document.WorkbookPart ?? throw new InvalidDataException("no workbook");
        var first = book.Workbook?.Sheets?.Elements<DocumentFormat.OpenXml.Spreadsheet.Sheet>().FirstOrDefault()?.Id?.Value
            ?? throw new InvalidDataException("no sheet");
        if (book.GetPartById(first) is not WorksheetPart part)
        {
            throw new InvalidDataException("the first sheet holds no cells");
        }

        var values = new CellTexts(book);
        var (rows, left) = (new List<SheetRow>(), MostCells);
        using var reader = OpenXmlReader.Create(part);
        while (rows.Count < most && reader.Read())
        {
            if (reader.ElementType == typeof(Row) && reader.IsStartElement)
            {
                var number = NumberOf(reader, rows);
                var cells = Cells(reader, values);
                left -= cells.Count;
                if (left < 0)
                {
                    return (null, FormattableString.Invariant($"a sheet of more than {MostCells} cells"));
                }

                if (cells.Exists(c => !string.IsNullOrWhiteSpace(c)))
                {
                    rows.Add(new(number, cells));
                }
            }
        }

        return (rows, null);
    }

    private static int NumberOf(OpenXmlReader reader, List<SheetRow> rows)
    {
        var stated = reader.Attributes.FirstOrDefault(a => a.LocalName == "r").Value;
        var next = rows.Count == 0 ? 1 : rows[^1].Number + 1;
        return stated is null ? next
            : int.Parse(stated, NumberStyles.None, CultureInfo.InvariantCulture) is var number
            && number >= next
            && number <= WorkbookWriter.MostRows ? number
            : throw new InvalidDataException("rows out of order");
    }

    private static List<string> Cells(OpenXmlReader reader, CellTexts values)
    {
        var cells = new List<string>();
        if (!reader.ReadFirstChild())
        {
            return cells;
        }

        do
        {
            if (reader.ElementType == typeof(Cell) && reader.LoadCurrentElement() is Cell cell)
            {
                var column = cell.CellReference?.Value is { } place ? ColumnOf(place) : cells.Count;
                if (column < cells.Count || column >= MostColumns)
                {
                    throw new InvalidDataException("cells out of order");
                }

                if (values.Of(cell) is { Length: > 0 } text)
                {
                    cells.AddRange(Enumerable.Repeat("", column - cells.Count));
                    cells.Add(text);
                }
            }
        }
        while (reader.ReadNextSibling());
        return cells;
    }

    private static int ColumnOf(string place)
    {
        var column = 0;
        foreach (var letter in place.TakeWhile(char.IsAsciiLetter))
        {
            column = Math.Min((column * 26) + (char.ToUpperInvariant(letter) - 'A' + 1), MostColumns + 1);
        }

        return column - 1 is >= 0 and var found ? found : throw new InvalidDataException("a cell without a column");
    }
}

/// <summary>A row of a sheet in which something stands.</summary>
/// <param name="Number">Its number, from 1.</param>
/// <param name="Cells">Its cells from the left, as texts; empty ones at the end left out.</param>
internal sealed record SheetRow(int Number, List<string> Cells);
