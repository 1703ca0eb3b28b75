using System.Buffers;
using System.Globalization;

namespace Viscolog.Tables;

/// <summary>How one file writes numbers: decimal point beside commas, decimal comma beside semicolons, beside tabs either.</summary>
/// <param name="separator">The file's separator.</param>
/// <param name="isPointBesideTabs">Whether the file has decimal points; asked where tabs part its cells.</param>
internal sealed class FileNumbers(char separator, bool isPointBesideTabs = true)
{
    private static readonly SearchValues<char> Marks = SearchValues.Create("0123456789.+-eE");

    private const NumberStyles Styles = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    /// <summary>Whether the file has decimal commas.</summary>
    public bool IsComma { get; } = separator == ';' || (separator == '\t' && !isPointBesideTabs);

    /// <summary>How to write a number, in words.</summary>
    public string Advice { get; } =
        separator == ';' ? "with a decimal comma (this is a semicolon file), without unit or thousands separators"
        : separator == '\t' && !isPointBesideTabs ? "with a decimal comma as others in this file, without unit or thousands separators"
        : "with a decimal point, without unit or thousands separators";

    /// <summary>Parses a number times ten to the <paramref name="shift"/>, rounded once only. The result may be infinite.</summary>
    public bool TryParse(string text, int shift, out double value)
    {
        value = 0;
        if (!TryPlain(text, out var plain) || (shift != 0 && !TryShift(ref plain, shift)))
        {
            return false;
        }

        var parsed = double.TryParse(plain, Styles, CultureInfo.InvariantCulture, out value);
        value = value == 0 ? 0 : value;
        return parsed;
    }

    /// <summary>Parses a sum of money.</summary>
    public bool TryParseMoney(string text, out decimal value)
    {
        value = 0;
        if (!TryPlain(text, out var plain) || !decimal.TryParse(plain, Styles, CultureInfo.InvariantCulture, out value))
        {
            return false;
        }

        // 88 and 88.0 are one price, and are written alike; the division drops zeros at the end.
        value /= 1.0000000000000000000000000000m;
        return true;
    }

    /// <summary>A number of a range; null with what ought to stand there.</summary>
    public double? Read(string text, NumberRange range, out string? expected)
    {
        expected = !TryParse(text.Trim(), range.Shift, out var value) ? $"{range.Words(null)}, {Advice}"
            : range.Allows(value) ? null : range.Words(value);
        return expected is null ? value : null;
    }

    /// <summary>The shortest text that reads back as the same number.</summary>
    public static string Show(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Seconds as exactly as the span holds them.</summary>
    public static string Show(TimeSpan span)
        => ((decimal)span.Ticks / TimeSpan.TicksPerSecond).ToString("0.#######", CultureInfo.InvariantCulture);

    /// <summary>Money without trailing zeros.</summary>
    public static string Show(decimal value) => value.ToString("G29", CultureInfo.InvariantCulture);

    /// <summary>Seconds as a span, to the tenth of a microsecond.</summary>
    public static TimeSpan Span(double seconds) => TimeSpan.FromTicks((long)decimal.Round((decimal)seconds * TimeSpan.TicksPerSecond));

    // Names of numbers (NaN, Infinity) would parse whatever the styles are, so every character is looked at first.
    private bool TryPlain(string text, out string plain)
    {
        plain = IsComma ? text.Replace(',', '.') : text;
        var foreign = IsComma ? '.' : ',';
        return !text.Contains(foreign, StringComparison.Ordinal) && !plain.AsSpan().ContainsAnyExcept(Marks);
    }

    private static bool TryShift(ref string plain, int shift)
    {
        var e = plain.IndexOfAny(['e', 'E']);
        var exponent = 0;
        if (e >= 0 && !int.TryParse(plain[(e + 1)..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out exponent))
        {
            return false;
        }

        var mantissa = e >= 0 ? plain[..e] : plain;
        plain = string.Create(CultureInfo.InvariantCulture, $"{mantissa}e{(long)exponent + shift}");
        return true;
    }
}
