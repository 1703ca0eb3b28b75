using System.Text.RegularExpressions;

namespace Viscolog.Text;

/// <summary>Breaks text into lines at spaces; where it is prose, never between a number and its unit or per cent sign.</summary>
internal static partial class Paragraph
{
    private const string Hard = "\u00a0";

    /// <summary>The text with spaces that hold number and unit together.</summary>
    public static string Bound(string text) => BeforeUnit().Replace(text, Hard);

    /// <summary>Lines no longer than so many characters, where the words allow it.</summary>
    public static IEnumerable<string> Of(string text, int width)
        => Filled(Bound(text).Split(' '), width, w => w.Length).Select(line => line.Replace(Hard, " ", StringComparison.Ordinal));

    /// <summary>Lines no wider than <paramref name="width"/>; a word that is wider alone is broken inside.</summary>
    /// <param name="text">Already cleaned.</param>
    /// <param name="width">In the unit that <paramref name="measure"/> returns.</param>
    /// <param name="measure">The width of a text.</param>
    public static IReadOnlyList<string> Broken(string text, double width, Func<string, double> measure)
    {
        string[] words = [.. Bound(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Pieces(w, width, measure))];
        return words.Length == 0
            ? []
            : [.. Filled(words, width, measure).Select(line => line.Replace(Hard, " ", StringComparison.Ordinal))];
    }

    // A short unit is one only behind a number; a per cent sign and the like always are.
    [GeneratedRegex(
        @" (?=%|mPa·s|°C|ln\b|± )|(?<=\d) (?=(g|kg|mL|L|s|min|h|mm|K|Pa|Pa·s|1/s|1/min)(?![\w/·]))|(?<=±) (?=\d)",
        RegexOptions.ExplicitCapture,
        1000)]
    private static partial Regex BeforeUnit();

    private static IEnumerable<string> Filled(IEnumerable<string> words, double width, Func<string, double> measure)
    {
        var line = "";
        foreach (var word in words)
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && measure(longer) > width)
            {
                yield return line;
                longer = word;
            }

            line = longer;
        }

        yield return line;
    }

    private static IEnumerable<string> Pieces(string word, double width, Func<string, double> measure)
    {
        var piece = "";
        foreach (var rune in word.EnumerateRunes())
        {
            var longer = piece + rune;
            if (piece.Length > 0 && measure(longer) > width)
            {
                yield return piece;
                longer = rune.ToString();
            }

            piece = longer;
        }

        yield return piece;
    }
}
