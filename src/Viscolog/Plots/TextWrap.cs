namespace Viscolog.Plots;

/// <summary>Breaks a text into lines at its spaces.</summary>
internal static class TextWrap
{
    /// <summary>Lines no wider than <paramref name="width"/>; a word that is wider alone is broken inside.</summary>
    /// <param name="text">Already cleaned.</param>
    /// <param name="width">In the unit that <paramref name="measure"/> returns.</param>
    /// <param name="measure">The width of a text.</param>
    public static IReadOnlyList<string> Lines(string text, double width, Func<string, double> measure)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Pieces(w, width, measure)))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && measure(longer) > width)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        return line.Length == 0 ? lines : [.. lines, line];
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
