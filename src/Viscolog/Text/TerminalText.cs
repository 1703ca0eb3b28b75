using System.Globalization;
using System.Text;

namespace Viscolog.Text;

/// <summary>
/// Text from outside as a terminal may be given it: what would move its cursor, change its colours, turn the direction of writing
/// or stand there unseen is named in its place, such as &lt;U+001B&gt;.
/// </summary>
internal static class TerminalText
{
    /// <summary>On one line: breaks and tabs become a space.</summary>
    public static string Of(string text) => Written(text.ReplaceLineEndings("\n"), static rune => Breaks(rune) ? " " : Named(rune));

    /// <summary>With its lines and tabs as they are; a carriage return before a line feed is part of the break.</summary>
    public static string Lines(string text)
        => Written(text.ReplaceLineEndings("\n"), static rune => rune.Value is '\n' or '\t' ? rune.ToString() : Named(rune));

    /// <summary>JSON that says the same to a program, with escapes in place of what a terminal must not be given.</summary>
    /// <param name="json">The JSON; nothing but its strings holds such characters.</param>
    /// <param name="ascii">Whether whatever is not ASCII is escaped as well.</param>
    public static string Json(string json, bool ascii = false)
        => Written(json, rune => rune.Value is '\n' or '\r' ? rune.Value == '\n' ? "\n" : ""
            : PlainText.Shows(rune) && !ascii ? rune.ToString() : Escaped(rune));

    private static string Written(string text, Func<Rune, string> odd)
    {
        var first = text.AsSpan().IndexOfAnyExceptInRange(' ', '~');
        if (first < 0)
        {
            return text;
        }

        var written = new StringBuilder(text.Length + 16).Append(text, 0, first);
        foreach (var rune in text.AsSpan(first).EnumerateRunes())
        {
            if (rune.Value is >= ' ' and <= '~')
            {
                written.Append((char)rune.Value);
            }
            else
            {
                written.Append(odd(rune));
            }
        }

        return written.ToString();
    }

    private static bool Breaks(Rune rune) => rune.Value is '\n' or '\t' or '\v';

    private static string Named(Rune rune)
        => PlainText.Shows(rune) ? rune.ToString() : string.Create(CultureInfo.InvariantCulture, $"<U+{rune.Value:X4}>");

    private static string Escaped(Rune rune)
        => string.Concat(rune.ToString().Select(c => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}")));
}
