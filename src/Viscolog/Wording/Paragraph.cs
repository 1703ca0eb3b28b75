namespace Viscolog.Wording;

/// <summary>Breaks text into lines at spaces, but never between a number and its unit or per cent sign.</summary>
internal static class Paragraph
{
    private static readonly string[] Units = ["%", "mPa·s", "°C", "ln", "g of", "g:", "g,", "g.", "± "];

    private const string Hard = "\u00a0";

    /// <summary>The text with spaces that hold number and unit together.</summary>
    public static string Bound(string text) => Units.Aggregate(text, (t, unit) => t.Replace(" " + unit, Hard + unit, StringComparison.Ordinal));

    public static IEnumerable<string> Of(string text, int width)
    {
        var line = "";
        foreach (var word in Bound(text).Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line.Replace(Hard, " ", StringComparison.Ordinal);
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        yield return line.Replace(Hard, " ", StringComparison.Ordinal);
    }
}
