using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>One line that tells which pot this is.</summary>
internal static class RunTitle
{
    private const int LongestName = 60;

    /// <summary>Shorter than this a name tells nothing any more.</summary>
    private const int ShortestName = 12;

    public static string Of(Run run) => Of(run, int.MaxValue);

    /// <summary>
    /// The line in no more than so many columns where that can be had: the name is shortened first, then the rest is left out.
    /// </summary>
    public static string Of(Run run, int columns)
    {
        string?[] rest =
        [
            run.Base.Name is { } name ? Say($"base {name}, {run.BaseMass.Grams.ToString("#,0.####", Spaced)} g") : null,
            run.MethodInForce == Method.Direct ? null : run.MethodInForce.Id,
            run.ReferenceTemperatureInForce.Celsius.ToString("0.#", Numbers) + " °C",
        ];
        var parts = rest.OfType<string>().ToList();
        if (run.Name is null)
        {
            return Joined(parts, columns);
        }

        var title = PlainText.Shorten(TerminalText.Of(run.Name), LongestName);
        while (Left(parts, columns) < Math.Min(PlainText.Columns(title), ShortestName) && parts.Count > 0)
        {
            parts.RemoveAt(parts.Count - 1);
        }

        return string.Join(" · ", parts.Prepend(PlainText.Shorten(title, Math.Max(1, Left(parts, columns)))));
    }

    /// <summary>The columns that these leave for a name in front of them.</summary>
    private static int Left(List<string> parts, int columns) => columns - parts.Sum(p => PlainText.Columns(p) + 3);

    private static string Joined(List<string> parts, int columns)
    {
        while (parts.Count > 1 && Left(parts, columns) < -3)
        {
            parts.RemoveAt(parts.Count - 1);
        }

        return string.Join(" · ", parts);
    }
}
