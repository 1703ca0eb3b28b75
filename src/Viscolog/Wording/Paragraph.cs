namespace Viscolog.Wording;

/// <summary>Breaks text into lines at spaces, but never between a number and its unit or per cent sign.</summary>
internal static class Paragraph
{
    private static readonly string[] Units = ["%", "mPa·s", "°C", "ln", "g of", "g:", "g,", "g.", "± "];

    public static IEnumerable<string> Of(string text, int width)
    {
        const string bound = "\u00a0";
        var line = "";
        foreach (var word in Units.Aggregate(text, (t, unit) => t.Replace(" " + unit, bound + unit, StringComparison.Ordinal)).Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line.Replace(bound, " ", StringComparison.Ordinal);
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        yield return line.Replace(bound, " ", StringComparison.Ordinal);
    }
}
