using System.Globalization;
using System.Text;

namespace Viscolog.Text;

/// <summary>Text from outside as a picture, a page or a terminal can show it.</summary>
internal static class PlainText
{
    /// <summary>Separates thousands; narrower than a space and never a decimal mark.</summary>
    public const char ThinSpace = '\u2009';

    /// <summary>The same where a line could break at it.</summary>
    public const char NarrowNoBreakSpace = '\u202f';

    /// <summary>
    /// Replaces what no picture or terminal can show (control and direction marks, broken surrogates) and runs of space by one space.
    /// </summary>
    public static string Clean(string text)
    {
        if (!text.AsSpan().ContainsAnyExceptInRange('!', '~'))
        {
            return text;
        }

        var result = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            if (rune.Value == ThinSpace || (Shows(rune) && !Rune.IsWhiteSpace(rune)))
            {
                result.Append(rune.ToString());
            }
            else if (result.Length > 0 && result[^1] != ' ')
            {
                result.Append(' ');
            }
        }

        return result.ToString().TrimEnd();
    }

    /// <summary>Cuts a text to a number of columns, an ellipsis at its end; wide characters count as two.</summary>
    public static string Shorten(string text, int columns, string ellipsis = "…")
    {
        var used = 0;
        var end = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            used += Columns(rune);
            if (used <= columns - ellipsis.Length)
            {
                end += rune.Utf16SequenceLength;
            }
        }

        return used <= columns ? text : text[..end].TrimEnd() + ellipsis;
    }

    /// <summary>Columns that a character takes: East Asian wide ones two, combining ones none.</summary>
    public static int Columns(Rune rune) => Rune.GetUnicodeCategory(rune) switch
    {
        UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark => 0,
        _ => rune.Value is (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3) or (>= 0xF900 and <= 0xFAFF)
            or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6) or (>= 0x1F300 and <= 0x3FFFD) ? 2 : 1,
    };

    /// <summary>Columns that a text takes.</summary>
    public static int Columns(string text)
        => text.AsSpan().ContainsAnyExceptInRange(' ', '~') ? text.EnumerateRunes().Sum(Columns) : text.Length;

    /// <summary>
    /// Whether a character shows as itself: not a control or direction mark, not one that stands unseen between others or looks like a
    /// space without being one (Unicode's Default_Ignorable_Code_Point, but for the selectors of a form), not one that no font knows.
    /// </summary>
    public static bool Shows(Rune rune) => rune.Value is >= ' ' and <= '~'
        || (rune != Rune.ReplacementChar && (rune.Value & 0xFFFE) != 0xFFFE && !StandsUnseen(rune.Value)
            && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate
                or UnicodeCategory.PrivateUse or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
                or UnicodeCategory.OtherNotAssigned));

    private static bool StandsUnseen(int value) => value is 0x034F or 0x115F or 0x1160 or 0x17B4 or 0x17B5 or (>= 0x180B and <= 0x180F)
        or 0x2800 or 0x3164 or 0xFFA0 or (>= 0xE0000 and <= 0xE0FFF);
}
