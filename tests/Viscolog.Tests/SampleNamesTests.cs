using System.Text.RegularExpressions;
using Viscolog.Core.Practice;
using Viscolog.Tests.Support;

namespace Viscolog.Tests;

/// <summary>Samples and pages name no material but the project's own inventions, which nobody can take for a product's code.</summary>
public sealed partial class SampleNamesTests
{
    /// <summary>
    /// Every name of a base, thickener or certified oil, and where it is from: all are the project's own, made up as plain words.
    /// </summary>
    private static readonly Dictionary<string, string> Own = new(StringComparer.Ordinal)
    {
        ["Apse"] = "own: the scenery workshop's associative thickener",
        ["Clew"] = "own: the scenery workshop's cellulosic thickener",
        ["Cusp"] = "own: the scenery workshop's thickener for low doses",
        ["Keel"] = "own: the certified oil of a page's example",
        ["Latch"] = "own: the scenery workshop's clear binder",
        ["Ledge"] = "own: the scenery workshop's glaze base",
        ["Lodge"] = "own: the scenery workshop's filled base",
        ["Lyric"] = "own: the scenery workshop's tinted glaze base",
        ["Nacre"] = "own: the scenery workshop's certified oil",
        ["Pier"] = "own: the thickener of practice pots",
        ["Sail"] = "own: the scenery workshop's alkali-swellable thickener",
        ["Tarn"] = "own: the thickener of a page's example",
        ["Wharf"] = "own: the base of a page's example",
    };

    [Fact]
    public void Samples_and_pages_name_these_and_no_others()
    {
        var samples = Directory.GetFiles(Checkout.At("sample-runs"), "*.csv", SearchOption.AllDirectories).Select(File.ReadAllText);
        string[] found =
        [
            .. samples.Concat(Pages.All.SelectMany(Pages.Blocks)).SelectMany(t => Name().Matches(t))
                .Select(m => m.Groups["name"].Value.Trim()),
            .. PracticeDifficulty.All.SelectMany(d => PracticeGame.Of(d, 1).Start.Thickeners).Select(t => t.Name),
        ];
        Assert.Equal(Own.Keys.Order(StringComparer.Ordinal), found.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_name_is_a_word_and_no_code()
        => Assert.All(Own, n =>
        {
            Assert.Matches("^[A-Z][a-z]+$", n.Key);
            Assert.StartsWith("own: ", n.Value, StringComparison.Ordinal);
        });

    [GeneratedRegex(
        """^(# (base|thickener): (?<name>[^;\r\n]+)|(base|thickener),(?!added_)(?<name>[^,\r\n]+)|"""
            + """\d{4}-\d\d-\d\d,[a-z0-9-]+,oil (?<name>[^,(\r\n]+))""",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline, 1000)]
    private static partial Regex Name();
}
