using System.Text.Json;
using System.Text.RegularExpressions;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Cli;

/// <summary>The pots that the page for instructors recommends end as it says.</summary>
public sealed partial class ClassPageTests
{
    private static readonly string Page = Pages.Text("docs/class.md");

    public static TheoryData<string, string, string[]> Pots
        => new(Row().Matches(Page).Select(m => (m.Groups["pot"].Value, m.Groups["seed"].Value, m.Groups["ends"].Value.Split(" | "))));

    [Theory]
    [MemberData(nameof(Pots))]
    public void A_pot_ends_for_each_player_as_the_page_says(string pot, string seed, string[] ends)
        => Assert.Equal(ends, Players(pot, seed).Select(Ending), StringComparer.Ordinal);

    [Fact]
    public void The_bold_player_goes_over_on_the_seeds_that_are_listed()
    {
        // The last of each kind is tried in the gate, all of them in a long run.
        var first = Sweep.Tries(1, 7);
        var listed = Page[Page.IndexOf("Of seeds 1 to 7", StringComparison.Ordinal)..].Split('\n')[0];
        Assert.All(Listed().Matches(listed), kind =>
        {
            var over = Enumerable.Range(first, 8 - first)
                .Where(s => Players(kind.Groups["pot"].Value, $"{s}")[1].GetProperty("verdict").GetString() == "over");
            Assert.Equal(Numbers(kind.Groups["seeds"].Value).Where(s => s >= first), over);
        });
    }

    private static JsonElement[] Players(string pot, string seed)
        => [.. JsonDocument.Parse(Called.With("practice", "demo", "--pot", pot, "--seed", seed, "--json").Output)
            .RootElement.GetProperty("players").EnumerateArray()];

    private static string Ending(JsonElement player)
    {
        var verdict = player.GetProperty("verdict").GetString()!;
        var over = player.TryGetProperty("over_at_dose", out var dose) && dose.ValueKind == JsonValueKind.Number
            ? $"over at dose {dose.GetInt32()}" : null;
        return over is null ? verdict : verdict == "over" ? over : $"{verdict} after {over}";
    }

    private static IEnumerable<int> Numbers(string seeds)
        => seeds.Split(", ", StringSplitOptions.RemoveEmptyEntries).SelectMany(s => s.Split(" to ") is [var from, var to]
            ? Enumerable.Range(Number(from), Number(to) - Number(from) + 1)
            : s == "none" ? [] : [Number(s)]);

    private static int Number(string text) => int.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^\| (?<pot>[a-z]+) \| (?<seed>\d+) \| (?<ends>[^|]+ \| [^|]+ \| [^|]+) \| [^|]+ \|$",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline,
        1000)]
    private static partial Regex Row();

    [GeneratedRegex(
        "(?<pot>easy|flat|slow|steep|peaked|hard) (?<seeds>none|[0-9]+( to [0-9]+)?(, [0-9]+)*)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Listed();
}
