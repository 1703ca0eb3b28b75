using System.Text.RegularExpressions;

namespace Viscolog.Tests.Support;

/// <summary>The pages of the documentation, by their paths from the project's folder.</summary>
internal static partial class Pages
{
    public static IReadOnlyList<string> All { get; } =
    [
        "README.md", "DEVELOPERS.md", "sample-runs/README.md",
        .. Directory.GetFiles(Checkout.At("docs"), "*.md").Select(f => "docs/" + Path.GetFileName(f)).Order(StringComparer.Ordinal),
    ];

    public static string Text(string page) => File.ReadAllText(Checkout.At(page)).ReplaceLineEndings("\n");

    /// <summary>What stands between fences, each block with its last line feed.</summary>
    public static IEnumerable<string> Blocks(string page) => Block().Matches(Text(page)).Select(m => m.Groups["text"].Value);

    /// <summary>What is set as code: whole blocks, and what stands between backticks.</summary>
    public static IEnumerable<string> Calls(string page)
        => Blocks(page).Concat(Inline().Matches(Block().Replace(Text(page), "")).Select(m => m.Groups["text"].Value));

    /// <summary>Where the links and pictures of a page lead, as written.</summary>
    public static IEnumerable<string> Links(string page) => Link().Matches(Text(page)).Select(m => m.Groups["to"].Value);

    /// <summary>The anchors that a page's headings make, but for capitals.</summary>
    public static IEnumerable<string> Anchors(string page)
        => Heading().Matches(Text(page)).Select(m => Dropped().Replace(m.Groups["words"].Value, "").Replace(' ', '-'));

    [GeneratedRegex("^```\\n(?<text>.*?)^```$", RegexOptions.ExplicitCapture | RegexOptions.Multiline | RegexOptions.Singleline, 1000)]
    private static partial Regex Block();

    [GeneratedRegex("`(?<text>[^`\\n]+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Inline();

    [GeneratedRegex(@"\]\((?<to>[^)\s]+)\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Link();

    [GeneratedRegex("^#+ (?<words>.+)$", RegexOptions.ExplicitCapture | RegexOptions.Multiline, 1000)]
    private static partial Regex Heading();

    [GeneratedRegex("[^A-Za-z0-9 _-]", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Dropped();
}
