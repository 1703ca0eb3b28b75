using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using PlainText = DocumentFormat.OpenXml.Spreadsheet.Text;

namespace Viscolog.Sheets;

/// <summary>What stands in the cells of one workbook, as texts: numbers with a decimal point, days and times by ISO 8601.</summary>
internal sealed class CellTexts
{
    private const double LastDay = 2_958_466;
    private const double DaysTo1904 = 1462;

    private readonly List<string> _shared = [];
    private readonly HashSet<uint> _dates = [];
    private readonly bool _is1904;

    /// <summary>Reads what the cells refer to.</summary>
    public CellTexts(WorkbookPart book)
    {
        _is1904 = book.Workbook?.WorkbookProperties?.Date1904?.Value == true;
        ReadShared(book.SharedStringTablePart);
        if (book.WorkbookStylesPart?.Stylesheet is { CellFormats: { } formats } styles)
        {
            var own = (styles.NumberingFormats?.Elements<NumberingFormat>() ?? []).Where(f => f.NumberFormatId is not null)
                .GroupBy(f => f.NumberFormatId!.Value).ToDictionary(g => g.Key, g => g.First().FormatCode?.Value ?? "");
            foreach (var (i, format) in formats.Elements<CellFormat>().Index())
            {
                var id = format.NumberFormatId?.Value ?? 0;
                if (
                    own.TryGetValue(id, out var code)
                        ? IsDate(code)
                        : id is >= 14 and <= 22 or >= 27 and <= 36 or >= 45 and <= 47 or >= 50 and <= 58)
                {
                    _dates.Add((uint)i);
                }
            }
        }
    }

    /// <summary>What stands in the cell; of a formula what it last came to.</summary>
    public string Of(Cell cell)
    {
        var value = cell.CellValue?.Text ?? "";
        var type = cell.DataType?.Value ?? CellValues.Number;
        const NumberStyles place = NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;
        return type == CellValues.SharedString ? _shared[int.Parse(value, place, CultureInfo.InvariantCulture)]
            : type == CellValues.InlineString ? cell.InlineString is { } inline ? TextOf(inline.Text, inline.Elements<Run>()) : ""
            : type == CellValues.Boolean ? value == "1" ? "TRUE" : "FALSE"
            : type == CellValues.Number && double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
                ? _dates.Contains(cell.StyleIndex?.Value ?? 0) ? DateOf(number) : number.ToString("R", CultureInfo.InvariantCulture)
            : SheetText.Decode(value);
    }

    // One after the other: as a tree of elements they take ten times their room.
    private void ReadShared(SharedStringTablePart? part)
    {
        if (part is null)
        {
            return;
        }

        using var reader = OpenXmlReader.Create(part);
        while (reader.Read())
        {
            if (
                reader.ElementType == typeof(SharedStringItem)
                    && reader.IsStartElement
                    && reader.LoadCurrentElement() is SharedStringItem item)
            {
                _shared.Add(TextOf(item.Text, item.Elements<Run>()));
            }
        }
    }

    private static string TextOf(PlainText? plain, IEnumerable<Run> runs)
        => SheetText.Decode(plain?.Text ?? string.Concat(runs.Select(r => r.Text?.Text)));

    private string DateOf(double days)
    {
        var since1900 = days + (_is1904 ? DaysTo1904 : 0);
        if (!(since1900 is >= 0 and < LastDay))
        {
            return days.ToString("R", CultureInfo.InvariantCulture);
        }

        var time = DateTime.FromOADate(since1900);
        var form = since1900 < 1 ? "HH':'mm':'ss" : time.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-dd'T'HH':'mm':'ss";
        return time.ToString(form, CultureInfo.InvariantCulture);
    }

    // Letters in quotes, in brackets or behind a backslash are no part of a date.
    private static bool IsDate(string code)
    {
        var (quoted, bracketed) = (false, false);
        for (var i = 0; i < code.Length; i++)
        {
            switch (code[i])
            {
                case '\\' or '_' or '*':
                    i++;
                    break;
                case '"':
                    quoted = !quoted;
                    break;
                case '[' or ']':
                    bracketed = code[i] == '[';
                    break;
                case 'y' or 'Y' or 'm' or 'M' or 'd' or 'D' or 'h' or 'H' or 's' or 'S' when !quoted && !bracketed:
                    return true;
                default:
                    break;
            }
        }

        return false;
    }
}
