using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Mono.Cecil;
using Viscolog.Core.Curves;
using Viscolog.Core.Measuring;
using Viscolog.Languages;
using Viscolog.Tests.Support;
using Viscolog.Tui.Batches;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Charts;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Practice;
using Viscolog.Tui.Runs;

namespace Viscolog.Tests.Languages;

/// <summary>Every text that is said has a German one, and nothing else has.</summary>
public sealed partial class GermanTextsTests
{
    private static readonly IReadOnlyDictionary<string, string> German = Translations.Of("German").Texts;

    /// <summary>Who says the texts of key tables.</summary>
    private static readonly string[] SaysForOthers = ["KeyTable`1", "ScreenView`2"];

    private static readonly ImmutableArray<(string? Text, string Room, string Method)> Said = Read();

    [Fact]
    public void Every_text_is_said_where_it_can_be_read()
        => Assert.Empty(Said.Where(s => s.Text is null && !SaysForOthers.Any(t => s.Method.Contains(t, StringComparison.Ordinal)))
            .Select(s => s.Method));

    [Fact]
    public void Every_text_has_a_german_one()
    {
        var texts = Texts();
        Assert.True(texts.Count > 1000);
        None(texts.Where(t => !German.ContainsKey(t)));
    }

    [Fact]
    public void No_german_text_is_left_over()
    {
        var texts = Texts();
        None(German.Keys.Where(k => !texts.Contains(k) && !texts.Contains(k.Split(Translations.BeforeSense)[0])));
    }

    /// <summary>The same holes with the same formats, and what stands between words at either end.</summary>
    [Fact]
    public void A_german_text_fits_where_the_english_one_stood() => Assert.All(German, pair =>
    {
        var english = pair.Key.Split(Translations.BeforeSense)[0];
        Assert.True(Holes(pair.Value).IsSubsetOf(Holes(english)), pair.Key);
        Assert.Equal(Ends(english), Ends(pair.Value));
    });

    /// <summary>Numbers that a German text leaves out would be lost to its reader.</summary>
    [Fact]
    public void A_german_text_leaves_no_number_out()
        => Assert.Empty(German.Where(p => !Holes(p.Key.Split(Translations.BeforeSense)[0]).SetEquals(Holes(p.Value))).Select(p => p.Key));

    private static void None(IEnumerable<string> texts)
    {
        var all = string.Join('\n', texts);
        Assert.True(all.Length == 0, all);
    }

    private static (bool, bool) Ends(string text) => (text.StartsWith(' '), text.EndsWith(' '));

    private static HashSet<string> Holes(string text)
        => [.. HolePattern().Matches(text.Replace("{{", "", StringComparison.Ordinal)).Select(m => m.Value)];

    private static HashSet<string> Texts() =>
    [
        .. Said.Select(s => s.Text).OfType<string>(),
        .. Keys(BenchScreen.Keys), .. Keys(RunsScreen.Keys(new([]))), .. Keys(RunsScreen.Keys(new([]) { IsPractice = true })),
        .. Keys(ChartScreen.Keys), .. Keys(CheckScreen.Keys), .. Keys(TrendScreen.Keys), .. Keys(MaterialsScreen.Keys),
        .. Keys(LearnScreen.Keys), .. Keys(PracticeScreen.Keys), .. Keys(GameScreen.Playing), .. Keys(GameScreen.Ended),
        .. Keys(DemoScreen.Keys), .. Keys(ScoresScreen.Keys), .. Keys(HelpScreen.Keys), .. Keys(PickScreen.Keys),
        .. Method.All.Where(m => Cups.Find(m) is null).Select(m => m.Words), .. Shapes.All.Select(s => s.Name),
    ];

    private static IEnumerable<string> Keys<TEvent>(KeyTable<TEvent> keys)
        where TEvent : class
        => keys.Rows.SelectMany(r => new[] { r.Word, r.Brief, r.Help }).Append(keys.Title).Concat(keys.Above).Concat(keys.Below)
            .Where(t => !string.IsNullOrEmpty(t)).Select(t => t!);

    private static ImmutableArray<(string? Text, string Room, string Method)> Read()
    {
        using var module = ModuleDefinition.ReadModule(typeof(Tongue).Assembly.Location);
        return [.. SpokenTexts.Of(module)];
    }

    [GeneratedRegex(@"\{\d+[^}]*\}", RegexOptions.None, 1000)]
    private static partial Regex HolePattern();
}
