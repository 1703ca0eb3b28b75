namespace Viscolog.Cli;

/// <summary>Breaks text into lines at spaces.</summary>
internal static class Paragraph
{
    public static IEnumerable<string> Of(string text, int width)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = word;
            }
            else
            {
                line = line.Length == 0 ? word : $"{line} {word}";
            }
        }

        yield return line;
    }
}
