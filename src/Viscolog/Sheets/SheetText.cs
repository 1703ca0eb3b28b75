using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml;

namespace Viscolog.Sheets;

/// <summary>
/// Texts in the XML of a workbook: what XML can't hold, and a carriage return, which it would turn into a line feed, stand there as
/// <c>_xHHHH_</c> (ECMA-376 part 1, section 22.9.2.19, ST_Xstring).
/// </summary>
internal static partial class SheetText
{
    /// <summary>The longest text of a cell; spreadsheets refuse a workbook with a longer one.</summary>
    public const int Longest = 32_767;

    /// <summary>The text as it stands in the XML.</summary>
    public static string Encode(string text)
    {
        var safe = Escape().Replace(text, "_x005F_");
        for (var at = safe.Length - 1; at >= 0; at--)
        {
            var isPair = at > 0 && char.IsSurrogatePair(safe[at - 1], safe[at]);
            if (!isPair && (safe[at] == '\r' || !XmlConvert.IsXmlChar(safe[at])))
            {
                safe = string.Create(CultureInfo.InvariantCulture, $"{safe[..at]}_x{(int)safe[at]:X4}_{safe[(at + 1)..]}");
            }

            at -= isPair ? 1 : 0;
        }

        return safe;
    }

    /// <summary>The text that stands in the XML.</summary>
    public static string Decode(string text)
        => text.Contains("_x", StringComparison.Ordinal)
            ? Escaped().Replace(
                text, m => ((char)int.Parse(m.ValueSpan[2..6], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture)).ToString())
            : text;

    // Only what would be taken for an escape is escaped itself.
    [GeneratedRegex("_(?=x[0-9A-Fa-f]{4}_)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Escape();

    [GeneratedRegex("_x[0-9A-Fa-f]{4}_", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Escaped();
}
