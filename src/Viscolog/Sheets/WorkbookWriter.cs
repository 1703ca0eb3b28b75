using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Viscolog.Sheets;

/// <summary>Writes workbooks (Office Open XML, ECMA-376): numbers as numbers, texts as texts, nothing as a formula.</summary>
internal static class WorkbookWriter
{
    /// <summary>The most rows of a sheet.</summary>
    public const int MostRows = 1 << 20;

    private const int LongestName = 31;
    private const uint FormulaLike = 1;

    /// <summary>Why the sheets can't be written; null where they can.</summary>
    public static string? Obstacle(IReadOnlyList<Sheet> sheets)
        => sheets.Any(s => s.Rows.Count > MostRows) ? FormattableString.Invariant($"more than {MostRows} rows, the most that a sheet has")
            : sheets.Any(s => s.Rows.Any(r => r.Any(c => c.Text?.Length > SheetText.Longest)))
                ? FormattableString.Invariant($"a text of more than {SheetText.Longest} characters, the most that a cell can hold")
                : null;

    /// <summary>Writes them; the stream stays open.</summary>
    /// <param name="sheets">One or more, without an <see cref="Obstacle"/>.</param>
    /// <param name="stream">Where to; it can seek.</param>
    public static void Write(IReadOnlyList<Sheet> sheets, Stream stream)
    {
        // Packages are made in memory: the library reads back what it wrote.
        using var made = new MemoryStream();
        using (var document = SpreadsheetDocument.Create(made, SpreadsheetDocumentType.Workbook))
        {
            var book = document.AddWorkbookPart();
            book.AddNewPart<WorkbookStylesPart>("styles").Stylesheet = Styles();
            var entries = new DocumentFormat.OpenXml.Spreadsheet.Sheets();
            var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
            foreach (var (i, sheet) in sheets.Index())
            {
                var id = string.Create(CultureInfo.InvariantCulture, $"sheet{i + 1}");
                WriteRows(sheet, book.AddNewPart<WorksheetPart>(id));
                entries.Append(
                    new DocumentFormat.OpenXml.Spreadsheet.Sheet { Id = id, SheetId = (uint)i + 1, Name = NameOf(sheet, i, names) });
            }

            book.Workbook = new(entries);
        }

        made.Position = 0;
        made.CopyTo(stream);
    }

    private static void WriteRows(Sheet sheet, WorksheetPart part)
    {
        using var writer = OpenXmlWriter.Create(part);
        writer.WriteStartElement(new Worksheet());
        writer.WriteStartElement(new SheetData());
        foreach (var (i, row) in sheet.Rows.Index())
        {
            writer.WriteStartElement(new Row { RowIndex = (uint)i + 1 });
            foreach (var (j, cell) in row.Index().Where(c => c.Item is not { Text: null, Number: null }))
            {
                writer.WriteElement(CellOf(cell, string.Create(CultureInfo.InvariantCulture, $"{Letters(j)}{i + 1}")));
            }

            writer.WriteEndElement();
        }

        writer.WriteEndElement();
        writer.WriteEndElement();
    }

    private static Cell CellOf(SheetCell cell, string place)
    {
        if (cell.Number is { } number)
        {
            return new() { CellReference = place, CellValue = new(number.ToString("R", CultureInfo.InvariantCulture)) };
        }

        var text = new DocumentFormat.OpenXml.Spreadsheet.Text(SheetText.Encode(cell.Text!)) { Space = SpaceProcessingModeValues.Preserve };
        var made = new Cell(new InlineString(text)) { CellReference = place, DataType = CellValues.InlineString };
        if (cell.Text![0] is '=' or '+' or '-' or '@')
        {
            // A text it is anyway; this keeps it one when somebody goes into the cell and out again.
            made.StyleIndex = FormulaLike;
        }

        return made;
    }

    private static Stylesheet Styles() => new(
        new Fonts(new Font()),
        new Fills(
            new Fill(new PatternFill { PatternType = PatternValues.None }),
            new Fill(new PatternFill { PatternType = PatternValues.Gray125 })),
        new Borders(new Border()),
        new CellStyleFormats(new CellFormat()),
        new CellFormats(new CellFormat(), new CellFormat { QuotePrefix = true }));

    /// <summary>A column's letters.</summary>
    /// <param name="column">The column, from 0.</param>
    internal static string Letters(int column)
    {
        var letters = "";
        for (var left = column + 1; left > 0; left = (left - 1) / 26)
        {
            letters = (char)('A' + ((left - 1) % 26)) + letters;
        }

        return letters;
    }

    private static string NameOf(Sheet sheet, int place, HashSet<string> taken)
    {
        var name = new string(
            [
                .. sheet.Name.Where(c => !char.IsControl(c) && !char.IsSurrogate(c) && !"[]:*?/\\".Contains(c, StringComparison.Ordinal)),
            ]).Trim(' ', '\'');
        name = name.Length > LongestName ? name[..LongestName].Trim(' ', '\'') : name;
        return name.Length > 0 && taken.Add(name) ? name : string.Create(CultureInfo.InvariantCulture, $"Sheet {place + 1}");
    }
}
