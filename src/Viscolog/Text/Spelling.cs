namespace Viscolog.Text;

/// <summary>What somebody may have meant who typed a word that there is not.</summary>
internal static class Spelling
{
    /// <summary>
    /// The closest of the words there are: at most a third of its letters differ, neighbours that changed places counting once; null where
    /// none is close.
    /// </summary>
    public static string? Meant(string typed, IEnumerable<string> known)
    {
        var closest = known.Select(k => (Word: k, Steps: Steps(typed, k))).Where(k => k.Steps <= Math.Max(1, k.Word.Trim('-').Length / 3))
            .OrderBy(k => k.Steps).ThenBy(k => k.Word, StringComparer.Ordinal).FirstOrDefault();
        return closest.Word ?? known.Where(k => typed.Trim('-').Length > 2 && k.StartsWith(typed, StringComparison.OrdinalIgnoreCase))
            .Order(StringComparer.Ordinal).FirstOrDefault();
    }

    // Optimal string alignment: letters put in, left out, changed, or changed places with their neighbour.
    private static int Steps(string from, string to)
    {
        var table = new int[from.Length + 1, to.Length + 1];
        for (var i = 0; i <= from.Length; i++)
        {
            for (var j = 0; j <= to.Length; j++)
            {
                table[i, j] = i == 0 || j == 0 ? i + j
                    : Math.Min(
                        Math.Min(table[i - 1, j], table[i, j - 1]) + 1,
                        table[i - 1, j - 1] + (Same(from[i - 1], to[j - 1]) ? 0 : 1));
                if (i > 1 && j > 1 && Same(from[i - 1], to[j - 2]) && Same(from[i - 2], to[j - 1]))
                {
                    table[i, j] = Math.Min(table[i, j], table[i - 2, j - 2] + 1);
                }
            }
        }

        return table[from.Length, to.Length];
    }

    private static bool Same(char left, char right) => char.ToUpperInvariant(left) == char.ToUpperInvariant(right);
}
