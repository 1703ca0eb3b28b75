using Viscolog.Languages;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tests.Support;

/// <summary>Compares a page of a screen with its stored text and, where the documentation shows it, with the picture there.</summary>
internal static class ExpectedPage
{
    private const string Folder = "docs/pictures";

    /// <summary>The stored pages that the documentation has a picture of, one for each screen, with what they are of.</summary>
    public static IReadOnlyDictionary<string, (string File, string Title)> Pictures { get; } =
        new Dictionary<string, (string, string)>(StringComparer.Ordinal)
        {
            ["bench-120x40"] = ("bench.svg", "The bench"),
            ["bench-pair-120x40"] = ("screen-pair.svg", "The bench with two thickeners"),
            ["runs-80x24"] = ("screen-runs.svg", "The list of runs"),
            ["chart-dose-80x24"] = ("screen-chart.svg", "The chart"),
            ["chart-runs-80x24"] = ("screen-overlay.svg", "The chart of several runs"),
            ["check-lantern-gel-21-80x24"] = ("screen-check.svg", "The check of a batch"),
            ["trend-log-80x24"] = ("screen-trend.svg", "The trend of a product"),
            ["materials-80x24"] = ("screen-materials.svg", "The materials"),
            ["practice-choice-80x24"] = ("screen-practice.svg", "The choice of a practice pot"),
            ["practice-game-80x24"] = ("screen-game.svg", "A practice game"),
            ["practice-demo-end-80x24"] = ("screen-demo.svg", "The demonstration"),
            ["practice-scores-80x24"] = ("screen-scores.svg", "The score sheet"),
            ["help-80x24"] = ("screen-help.svg", "The help"),
        };

    /// <summary>Checks a page.</summary>
    /// <param name="name">Of the stored page, without its ending.</param>
    /// <param name="page">The page as it is now.</param>
    /// <returns>Its text.</returns>
    public static string Check(string name, Page page)
    {
        var text = page.Text + "\n";
        var isGerman = Tongue.Spoken == Language.German;
        ExpectedFile.Check($"tui/{(isGerman ? "de/" : "")}{name}.txt", text);
        if (!isGerman && Pictures.TryGetValue(name, out var picture))
        {
            StoredPicture.Check($"{Folder}/{picture.File}", ScreenPicture.Of(page, picture.Title));
        }

        return text;
    }

    /// <summary>The name of a stored page.</summary>
    public static string Name(string screen, int width, int height, bool isAscii)
        => FormattableString.Invariant($"{screen}-{width}x{height}{(isAscii ? "-ascii" : "")}");
}
