using System.Globalization;
using System.Text;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>Texts as pictures show them.</summary>
internal static class PlotText
{
    /// <summary>Separates thousands; narrower than a space and never a decimal mark.</summary>
    public const char ThinSpace = '\u2009';

    /// <summary>The unit of every viscosity here.</summary>
    public const string Unit = "mPa·s";

    /// <summary>Replaces what no picture or terminal can show (control and direction marks, broken surrogates) and runs of space by one space.</summary>
    public static string Clean(string text)
    {
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
    public static int Columns(string text) => text.EnumerateRunes().Sum(Columns);

    /// <summary>A number in full with thousands set apart, at most three significant figures.</summary>
    public static string Number(double value, char separator = ThinSpace)
    {
        if (value == 0)
        {
            return "0";
        }

        var digits = 2 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (digits > 0)
        {
            return value.ToString("0." + new string('#', Math.Min(digits, 12)), CultureInfo.InvariantCulture);
        }

        // Beyond 15 places a number in full says nothing that a person can read.
        return Math.Abs(value) >= 1e15
            ? value.ToString("0.##E+0", CultureInfo.InvariantCulture)
            : Group(Math.Round(value / Math.Pow(10, -digits)) * Math.Pow(10, -digits), separator);
    }

    /// <summary>A viscosity without its unit.</summary>
    public static string Number(Viscosity value, char separator = ThinSpace) => Number(value.MilliPascalSeconds, separator);

    /// <summary>A dose with its unit, to the hundredth that a bench scale tells.</summary>
    public static string Percent(Dose dose) => string.Create(CultureInfo.InvariantCulture, $"{dose.Percent:0.00} %");

    /// <summary>A temperature with its unit.</summary>
    public static string Celsius(Temperature value) => string.Create(CultureInfo.InvariantCulture, $"{value.Celsius:0.0} °C");

    /// <summary>A chance with its unit.</summary>
    public static string Level(Estimate value) => string.Create(CultureInfo.InvariantCulture, $"{value.Level.Percent:0.#} %");

    private static string Group(double value, char separator) => value.ToString("N0", CultureInfo.InvariantCulture).Replace(',', separator);

    private static bool Shows(Rune rune) => rune != Rune.ReplacementChar && (rune.Value & 0xFFFE) != 0xFFFE
        && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate
            or UnicodeCategory.PrivateUse or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.OtherNotAssigned);
}
