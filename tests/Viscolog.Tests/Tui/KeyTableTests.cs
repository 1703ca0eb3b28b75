using System.Text;
using Viscolog.Tests.Support;
using Viscolog.Tui.Batches;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Charts;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Practice;
using Viscolog.Tui.Runs;

namespace Viscolog.Tests.Tui;

/// <summary>The keys of every screen: no key twice, and the documents as the tables are.</summary>
public sealed class KeyTableTests
{
    private const string Begin = "<!-- keys: made from the tables of the screens; VISCOLOG_ACCEPT=1 writes them anew -->";
    private const string End = "<!-- end of keys -->";

    [Fact]
    public void The_keys_in_the_documents_are_those_of_the_screens()
    {
        var path = Path.Combine(Checkout.Root, "docs", "screens.md");
        var text = File.ReadAllText(path);
        var (from, to) = (text.IndexOf(Begin, StringComparison.Ordinal), text.IndexOf(End, StringComparison.Ordinal));
        Assert.True(from > 0 && to > from, "the place of the keys in docs/screens.md");
        var current = text[..from] + Begin + "\n\n" + Documents() + text[to..];
        if (Environment.GetEnvironmentVariable("VISCOLOG_ACCEPT") == "1")
        {
            File.WriteAllText(path, current);
        }

        Assert.Equal(current, File.ReadAllText(path));
    }

    [Fact]
    public void A_key_does_one_thing_and_every_key_of_a_name_does_something()
    {
        OneThing(BenchScreen.Keys);
        OneThing(RunsScreen.Keys(new([])));
        OneThing(RunsScreen.Keys(new([]) { IsPractice = true }));
        OneThing(ChartScreen.Keys);
        OneThing(CheckScreen.Keys);
        OneThing(TrendScreen.Keys);
        OneThing(MaterialsScreen.Keys);
        OneThing(LearnScreen.Keys);
        OneThing(PracticeScreen.Keys);
        OneThing(GameScreen.Playing);
        OneThing(GameScreen.Ended);
        OneThing(DemoScreen.Keys);
        OneThing(ScoresScreen.Keys);
    }

    [Theory]
    [InlineData(78)]
    [InlineData(118)]
    [InlineData(58)]
    public void The_help_names_every_key_and_its_lines_fit(int columns)
    {
        var lines = BenchScreen.Keys.HelpLines(columns).ToList();
        Assert.All(lines, l => Assert.True(l.Length <= columns, l));
        Assert.All(
            BenchScreen.Keys.Rows.Where(r => r.Help.Length > 0),
            r => Assert.Contains(lines, l => l.Contains(r.Help, StringComparison.Ordinal)));
    }

    [Fact]
    public void The_footer_has_its_short_words_where_there_is_little_room()
    {
        KeyTable<string> keys = new(
            "Trial",
            new("Enter", null, "hidden", "enter"),
            new("F2", "what it does", "help", "two") { Brief = "short" },
            new("F3", "left out", "help", "three") { Brief = null },
            new("^Q", "", "quit") { Role = KeyRole.Quits })
        {
            WideFrom = 80,
        };
        Assert.Equal(" F2 what it does  F3 left out  ^Q", keys.Footer(80, isAscii: false));
        Assert.Equal(" F2 short ^Q", keys.Footer(79, isAscii: false));
        Assert.Equal(" F2 short ^Q", keys.Footer(12, isAscii: false));
        Assert.Equal(" ^Q", keys.Footer(11, isAscii: false));
        Assert.Equal(
            [null, "F2", "F2", null, "^Q", null],
            new[] { 0, 1, 8, 9, 10, 12 }.Select(c => keys.KeyAt(79, false, c)),
            StringComparer.Ordinal);
    }

    private static void OneThing<TEvent>(KeyTable<TEvent> keys)
        where TEvent : class
    {
        var names = keys.Rows.SelectMany(r => r.Keys).ToList();
        Assert.Equal(names.Distinct(StringComparer.Ordinal).Count(), names.Count);
        Assert.All(
            keys.Rows.Where(r => r.Role == KeyRole.Sends && r.Typed is null && r.Name != "Tab"),
            r => Assert.Equal(r.Keys.Length, r.Events.Length));
    }

    private static string Documents()
    {
        var text = new StringBuilder();
        Add(text, BenchScreen.Keys);
        Add(text, RunsScreen.Keys(new([])));
        Add(text, ChartScreen.Keys);
        Add(text, CheckScreen.Keys);
        Add(text, TrendScreen.Keys);
        Add(text, MaterialsScreen.Keys);
        Add(text, PracticeScreen.Keys);
        Add(text, GameScreen.Playing);
        Add(text, GameScreen.Ended);
        Add(text, DemoScreen.Keys);
        Add(text, ScoresScreen.Keys);
        return text.ToString();
    }

    private static void Add<TEvent>(StringBuilder text, KeyTable<TEvent> keys)
        where TEvent : class
    {
        text.Append("| ").Append(keys.Title).Append(" | |\n|---|---|\n");
        foreach (var row in keys.Rows.Where(r => r.Help.Length > 0))
        {
            text.Append("| ").Append(row.Name.Replace("^", "Ctrl+", StringComparison.Ordinal)).Append(" | ").Append(row.Help)
                .Append(" |\n");
        }

        text.Append('\n');
    }
}
