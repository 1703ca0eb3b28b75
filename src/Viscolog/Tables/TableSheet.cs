using System.Globalization;
using Viscolog.Output;
using Viscolog.Sheets;

namespace Viscolog.Tables;

/// <summary>Files of this program as sheets of a workbook: header lines with the value in a cell of its own, then the table.</summary>
internal static class TableSheet
{
    /// <summary>The sheet that says what a file says.</summary>
    /// <param name="name">The sheet's name.</param>
    /// <param name="csv">The file as this program writes it.</param>
    /// <param name="isText">Whether a key or column holds text, whatever it looks like.</param>
    public static Sheet Of(string name, ReadOnlyMemory<byte> csv, Func<string, bool> isText)
    {
        var findings = new Findings(name);
        var layout = TableLayout.OfFile(csv, findings, "", "") ?? throw new ArgumentException(findings.Refusal!.Text, nameof(csv));
        List<IReadOnlyList<SheetCell>> rows =
        [
            .. layout.Header.Select(h => (SheetCell[])[SheetCell.Of($"# {h.Key}:"), Cell(h.Value, isText(h.Key))]),
        ];
        using var reader = layout.Reader(r => throw new ArgumentException("quotes that are not closed", nameof(csv)));
        var names = TableLayout.NamesOf(reader);
        rows.Add([.. names.Select(SheetCell.Of)]);
        while (reader.Read())
        {
            rows.Add(
                [.. Enumerable.Range(0, reader.FieldCount).Select(i => Cell(reader.GetString(i), i >= names.Length || isText(names[i])))]);
        }

        return new(name, rows);
    }

    /// <summary>A workbook of sheets; refused where one can't hold them.</summary>
    public static Outcome<byte[]> Workbook(IReadOnlyList<Sheet> sheets)
    {
        if (WorkbookWriter.Obstacle(sheets) is { } obstacle)
        {
            return new Refused($"it doesn't fit in a workbook: {obstacle}; write it as CSV");
        }

        using var stream = new MemoryStream();
        WorkbookWriter.Write(sheets, stream);
        return stream.ToArray();
    }

    // Only a text that a number says wholly becomes one: 007 and 1.50 stay as they are.
    private static SheetCell Cell(string text, bool isText)
        => !isText
            && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            && double.IsFinite(number)
            && FileNumbers.Show(number) == text
            ? SheetCell.Of(number) : SheetCell.Of(text);
}
