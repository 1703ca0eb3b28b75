using Viscolog.Core.Advising;
using Viscolog.Core.Charting;
using Viscolog.Core.Quantities;
using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Plots.Oxy;
using Viscolog.Tests.Support;

namespace Viscolog.Tests.Plots;

/// <summary>Labels of files, read from what was drawn: none covers another or a mark.</summary>
public sealed class LabelTests
{
    private static readonly string[] Runs =
    [
        "clear-jelly-03-low-range", "dusk-glaze-05-flattening", "dusk-glaze-06-decimal-comma", "harbour-gel-02-over", "lantern-gel-06",
        "lantern-gel-07", "lantern-gel-08-read-early",
    ];

    public static TheoryData<string, string> Stored => new()
    {
        { "lantern-gel-07.svg", "plot sample-runs/lantern-gel-07.csv" },
        { "thread-gel-02-map.svg", "plot sample-runs/pair/thread-gel-02.csv --kind map" },
        { "practice-slow-3.svg", "practice demo --pot slow --seed 3 --brief" },
        { "lantern-gel-trend.svg", "trend sample-runs/trend/lantern-gel-batches.csv --baseline 20" },
    };

    public static TheoryData<string> Calls =>
    [
        .. Runs.Select(r => $"plot sample-runs/{r}.csv"),
        .. new[] { "settling", "residuals", "string" }.SelectMany(k => new[] { "lantern-gel-07", "dusk-glaze-05-flattening" }
            .Select(r => $"plot sample-runs/{r}.csv --kind {k}")),
        "plot sample-runs/pair/thread-gel-02.csv", "plot sample-runs/pair/thread-gel-02.csv --kind map",
        "plot sample-runs/lantern-gel-06.csv sample-runs/lantern-gel-07.csv sample-runs/lantern-gel-08-read-early.csv",
        "plot sample-runs/lantern-gel-07.csv sample-runs/harbour-gel-02-over.csv sample-runs/dusk-glaze-05-flattening.csv",
        "plot sample-runs/lantern-gel-06.csv sample-runs/lantern-gel-07.csv --kind settling",
        "trend sample-runs/trend/lantern-gel-batches.csv --baseline 20", "trend sample-runs/trend/lantern-gel-batches.csv --linear-scale",
        "flow sample-runs/flow/dusk-glaze-loop.csv", "flow sample-runs/flow/lantern-gel-sweep.csv",
    ];

    [Theory]
    [MemberData(nameof(Stored))]
    public void In_a_picture_of_the_documentation_which_is_as_it_is_drawn_now(string name, string call)
    {
        var path = $"docs/pictures/{name}";
        // Another machine may compute another last digit.
        StoredPicture.Check(path, System.Text.Encoding.UTF8.GetString(Drawn(call)).TrimStart('\uFEFF'), within: 1);
        Assert.Empty(new DrawnSvg(File.ReadAllBytes(Checkout.At(path))).Overlaps());
    }

    [Theory]
    [MemberData(nameof(Calls))]
    public void In_a_picture_of_a_sample(string call) => Assert.Empty(new DrawnSvg(Drawn(call)).Overlaps());

    private static byte[] Drawn(string call)
    {
        using var folder = new TemporaryFolder();
        var words = call.Split(' ').Select(w => w.StartsWith("sample-runs/", StringComparison.Ordinal) ? Checkout.At(w) : w);
        Assert.Equal(0, Called.With([.. words, "-o", folder.Of("a.svg")]).Code);
        return File.ReadAllBytes(folder.Of("a.svg"));
    }

    [Fact]
    public void In_invented_pictures()
    {
        IReadOnlyList<RunPicture>[] all =
        [
            [SamplePictures.Full()], [SamplePictures.LetDown()], [SamplePictures.OneReading()], [SamplePictures.Empty()],
            SamplePictures.Apart(), SamplePictures.Several(2), SamplePictures.Several(3), SamplePictures.Several(12),
        ];
        Assert.All(all, runs => Assert.All(RunPlots.Kinds(runs), kind =>
            Assert.Empty(new DrawnSvg(PictureFile.Svg(RunPlots.Of(runs, kind))).Overlaps())));
    }

    [Fact]
    public void The_reading_of_a_file_finds_its_texts_and_marks_and_what_is_covered()
    {
        var drawn = new DrawnSvg(PictureFile.Svg(DosePlot.Of(SamplePictures.Full())));
        Assert.Contains(drawn.Texts, t => t.Text.StartsWith("target 12", StringComparison.Ordinal));
        // Nine readings and four settled values, and their lines of the legend.
        Assert.InRange(drawn.Marks.Count, 13, 20);
        var words = new Element.Words(Meaning.Boundary, new(1.2, 2000), "over a mark", 0);
        var (first, panel) = (DosePlot.Of(SamplePictures.Full()), DosePlot.Of(SamplePictures.Full()).Panels[0]);
        Assert.Empty(
            new DrawnSvg(PictureFile.Svg(first with { Panels = [panel with { Elements = panel.Elements.Add(words) }] })).Overlaps());
        Assert.True(new DrawnSvg.Box(0, 0, 10, 10).Meets(new(9, 9, 20, 20)));
        Assert.False(new DrawnSvg.Box(0, 0, 10, 10).Meets(new(10, 0, 20, 10)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Each_limit_and_target_of_several_runs_is_named(bool inCharacters)
    {
        var picture = DosePlot.Of(SamplePictures.Apart());
        var shown = inCharacters
            ? string.Join('\n', TerminalChart.Draw(picture, 100, 30, ascii: true))
            : string.Join('\n', new DrawnSvg(PictureFile.Svg(picture)).Texts.Select(t => t.Text)).Replace('\u2009', ' ');
        string[] words = inCharacters
            ? [" target A ", " target B ", " target C ", "target A 10 200 to 13 800", "target B 7 650 to 10 350", "target C 3 600 to 4 400",
                "limit C 3.80 %", "limit B 3.90 %", "limit A 4.00 %", "limit of glaze gel"]
            : ["target of glaze gel 01", "target of glaze gel 02", "target of glaze gel 03", "(7 650 to 10 350)",
                "limit of 3.90 %,", "limit of 4.00 %,"];
        Assert.All(words, w => Assert.Contains(w, shown, StringComparison.Ordinal));
    }

    [Fact]
    public void More_limits_and_targets_than_have_room_stand_in_the_legend()
    {
        var runs = SamplePictures.Several(5).Select((r, i) => r with
        {
            Target = ViscosityBand.Around(SamplePictures.Mpas(2000 * (i + 1)), Percentage.FromPercent(10)),
        }).ToList();
        var texts = new DrawnSvg(PictureFile.Svg(DosePlot.Of(runs))).Texts.Select(t => t.Text).ToList();
        Assert.All(
            Enumerable.Range(1, 5), i => Assert.Contains(texts, t => t.StartsWith($"target of glaze gel 0{i} ", StringComparison.Ordinal)));
        Assert.All(Enumerable.Range(1, 4), i => Assert.Contains(texts, t => t.StartsWith("limit of ", StringComparison.Ordinal)
            && t.EndsWith($"glaze gel 0{i}", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_let_down_is_an_arrow_from_before_to_after()
    {
        var picture = DosePlot.Of(SamplePictures.LetDown());
        var arrows = picture.Panels[0].Elements.OfType<Element.Arrow>().ToList();
        Assert.Equal(
            [(Meaning.LetDown, 3.4, 2.9), (Meaning.LetDown, 2.9, 2.4), (Meaning.Next, 2.4, 1.8)],
            arrows.Select(a => (a.Meaning, a.From.X, a.To.X)));
        Assert.Equal("next: base, to 1.80 %", arrows[2].Lines[0]);
        var texts = new DrawnSvg(PictureFile.Svg(picture)).Texts.Select(t => t.Text).ToList();
        Assert.Contains("base added", texts, StringComparer.Ordinal);
        Assert.Contains("next: base, to 1.80 %", texts, StringComparer.Ordinal);
        foreach (var (ascii, made, next) in new[] { (false, '◁', '◂'), (true, '<', '{') })
        {
            var lines = TerminalChart.Draw(picture, 72, 20, ascii);
            Assert.Equal(2, lines.Take(16).Sum(l => l.Count(c => c == made)));
            Assert.Equal(1, lines.Take(16).Sum(l => l.Count(c => c == next)));
            Assert.Contains($"{made} base added", string.Join(' ', lines), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(ChartScale.Log)]
    [InlineData(ChartScale.Linear)]
    public void A_trend_names_its_batches_and_shows_both_wanted_ends(ChartScale scale)
    {
        var picture = Trend(scale, i => $"Lantern gel {i:00}");
        var (file, lines) = (new DrawnSvg(PictureFile.Svg(picture)), TerminalChart.Draw(picture, 80, 24, ascii: true));
        Assert.All(
            new[] { "02", "04", "20", "Batch: Lantern gel…" },
            n => Assert.Contains(n, file.Texts.Select(t => t.Text), StringComparer.Ordinal));
        Assert.Empty(file.Overlaps());
        Assert.EndsWith(
            "batch: lantern gel...", lines.Single(l => l.Contains("batch:", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Contains(" 03 ", lines.Single(l => l.Contains("batch:", StringComparison.Ordinal)), StringComparison.Ordinal);
        // Both ends of what is wanted have a row of their own or take turns in one with a limit.
        Assert.True(lines.Count(l => l.Contains("!!!", StringComparison.Ordinal)) >= 2, string.Join('\n', lines));
    }

    [Fact]
    public void Names_of_batches_are_thinned_where_they_would_touch()
    {
        var lines = TerminalChart.Draw(Trend(ChartScale.Log, i => $"pot-{i * 37:00000}"), 60, 24, ascii: false);
        var names = lines.Single(l => l.Contains("batch", StringComparison.Ordinal) && l.Contains("00037", StringComparison.Ordinal));
        Assert.Matches(@"^ *\d{5}( +\d{5})+ +batch: pot-…$", names);
    }

    [Fact]
    public void A_stated_value_reads_the_same_everywhere()
    {
        // 9 000 mPa·s ±15 %: the upper edge is 10 350, which three figures would show as 10 400.
        var runs = SamplePictures.Apart();
        var shown = string.Join(' ', TerminalChart.Draw(DosePlot.Of(runs), 120, 40, ascii: true))
            + string.Join(' ', new DrawnSvg(PictureFile.Svg(DosePlot.Of(runs))).Texts.Select(t => t.Text)).Replace('\u2009', ' ');
        Assert.Equal(2, shown.Split("10 350").Length - 1);
        Assert.DoesNotContain("10 400", shown, StringComparison.Ordinal);
        Assert.Equal(
            ("10\u2009350", "10\u2009300", "10\u2009025"), (PlotText.Stated(10_350), PlotText.Number(10_340), PlotText.Tick(10_025)));
    }

    private static Picture Trend(ChartScale scale, Func<int, string> name)
    {
        // Invented batches about 9 000 mPa·s.
        int[] off = [0, 2, -3, 1, 4, -2, 5, -4, 0, 3, -1, 2, -5, 1, 0, 4, -3, 2, -2, 3];
        var outcome = ControlChart.Of(new(
            [.. off.Select((o, i) => new ChartPoint(name(i + 1), 9000 + (100 * o)))], scale)
        { Low = 7650, High = 10_350 });
        return new TrendPicture("Lantern gel", "Viscosity, mPa·s", Assert.IsType<ChartOutcome.Charted>(outcome).Chart).Picture();
    }
}
