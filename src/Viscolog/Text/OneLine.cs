using System.Text;

namespace Viscolog.Text;

/// <summary>Makes text from outside fit on one line.</summary>
internal static class OneLine
{
    private const int Most = 60;

    /// <summary>The text with every line break and other control character as a space: content that stands on one line.</summary>
    public static string Of(string text)
    {
        if (!text.Any(Breaks))
        {
            return text;
        }

        var plain = new StringBuilder(text.Length);
        foreach (var c in text.ReplaceLineEndings(" "))
        {
            plain.Append(Breaks(c) ? ' ' : c);
        }

        return plain.ToString();
    }

    /// <summary>The text as a message shows it, in quotes, cut where it is long; <c>nothing</c> where there is none.</summary>
    public static string Quoted(string text)
    {
        var line = TerminalText.Of(text).Trim();
        return line.Length == 0 ? "nothing" : $"'{Cut(line, Most)}'";
    }

    /// <summary>The text cut after so many chars, an ellipsis behind; a letter of two chars is not cut in half.</summary>
    public static string Cut(string text, int most)
        => text.Length <= most ? text : text[..(char.IsHighSurrogate(text[most - 1]) ? most - 1 : most)] + "…";

    private static bool Breaks(char c) => char.IsControl(c) || c is '\u2028' or '\u2029';
}
