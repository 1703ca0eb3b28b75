using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.MaterialFiles;
using Viscolog.Plots;
using Viscolog.Store.Copy;
using Viscolog.Tables;
using Viscolog.Tests.Support;
using Viscolog.Text;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Charts;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Runs;

namespace Viscolog.Tests.Tui;

/// <summary>What the screens show, at the sizes that terminals have.</summary>
public class PageTests
{
    public static TheoryData<int, int, bool> Sizes => new()
    {
        { 80, 24, false },
        { 80, 24, true },
        { 120, 40, false },
        { 60, 16, false },
        { 40, 10, false },
    };

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_bench_is_as_stored(int width, int height, bool isAscii)
    {
        var trial = Trial();
        var page = ExpectedPage.Check(ExpectedPage.Name("bench", width, height, isAscii), trial.Drawn(width, height, isAscii));
        Fits(page, width, height, isAscii);
    }

    [Fact]
    public void No_footer_and_no_line_of_advice_is_cut()
    {
        var folder = Path.Combine(Checkout.Root, "tests", "Viscolog.Tests", "Expected", "tui");
        var pages = Directory.GetFiles(folder, "*.txt", SearchOption.AllDirectories)
            .Where(p => !p.Contains("40x10", StringComparison.Ordinal)).ToList();
        Assert.True(pages.Count > 50);
        Assert.All(pages, p =>
        {
            var lines = File.ReadAllText(p).TrimEnd('\n').Split('\n');
            var boxed = lines.Where(l => l.StartsWith(" │", StringComparison.Ordinal) || l.StartsWith(" |", StringComparison.Ordinal));
            // A reason that goes on says how to see the rest.
            Assert.DoesNotContain(
                boxed.Where(l => !l.Contains("(? ", StringComparison.Ordinal)).Append(lines[^1]),
                l => l.Contains('…', StringComparison.Ordinal)
                    || l.Contains("...", StringComparison.Ordinal)
                    || l.Contains('~', StringComparison.Ordinal));
        });
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_list_of_runs_is_as_stored(int width, int height, bool isAscii)
    {
        var runs = Enumerable.Range(1, 30)
            .Select(i => new RunSummary(
                31 - i,
                Guid.Empty,
                Header($"Lantern gel {31 - i:00}", "Ledge", null, "Sail"),
                i,
                0,
                i,
                new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero)));
        var page = ExpectedPage.Check(
            ExpectedPage.Name("runs", width, height, isAscii),
            RunsPage.Of(new RunsState([.. runs]).Move(3).Mark().Move(1), new(width, height, isAscii)));
        Fits(page, width, height, isAscii);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_chart_is_as_stored(int width, int height, bool isAscii)
    {
        var state = new ChartState([SamplePictures.Full()]);
        foreach (var (
            name,
            shown) in new[] { (
                "dose",
                state), ("settling", Next(state)), ("residuals", Next(Next(state))), ("string", Next(Next(Next(state)))) })
        {
            var page = ExpectedPage.Check(
                ExpectedPage.Name("chart-" + name, width, height, isAscii), ChartPage.Of(shown, new(width, height, isAscii)));
            Fits(page, width, height, isAscii);
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Several_runs_share_every_chart(int width, int height, bool isAscii)
    {
        var state = new ChartState([.. SamplePictures.Apart()]);
        ExpectedPage.Check(ExpectedPage.Name("chart-runs", width, height, isAscii), ChartPage.Of(state, new(width, height, isAscii)));
        for (var i = 0; i < Enum.GetValues<PlotKind>().Length; i++)
        {
            Fits(ChartPage.Of(state, new(width, height, isAscii)).Text, width, height, isAscii);
            state = Next(state);
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_materials_are_as_stored(int width, int height, bool isAscii)
    {
        var read = Assert.IsType<TableOutcome<MaterialFile>.Read>(MaterialFileReader.Parse(
            "workshop.csv",
            File.ReadAllBytes(Checkout.Sample("materials/workshop.csv"))));
        var page = ExpectedPage.Check(
            ExpectedPage.Name("materials", width, height, isAscii),
            MaterialsPage.Of(new MaterialsState([.. read.File.Rows]).Move(2), new(width, height, isAscii)));
        Fits(page, width, height, isAscii);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_help_is_as_stored(int width, int height, bool isAscii)
    {
        var page = HelpScreen.PageOf(new("Bench", BenchScreen.Keys.HelpLines), new(width, height, isAscii));
        Fits(ExpectedPage.Check(ExpectedPage.Name("help", width, height, isAscii), page), width, height, isAscii);
    }

    [Fact]
    public void Every_picture_of_a_screen_is_small_and_of_a_stored_page()
        => Assert.All(ExpectedPage.Pictures, p =>
        {
            Assert.True(File.Exists(Checkout.At($"tests/Viscolog.Tests/Expected/tui/{p.Key}.txt")), p.Key);
            Assert.InRange(new FileInfo(Checkout.At($"docs/pictures/{p.Value.File}")).Length, 2_000, 25_000);
        });

    [Theory]
    [InlineData(81, 24)]
    [InlineData(79, 17)]
    [InlineData(60, 50)]
    [InlineData(200, 16)]
    [InlineData(1, 1)]
    [InlineData(300, 100)]
    public void Any_size_is_filled_and_never_overflows(int width, int height)
    {
        Fits(Trial().Page(width, height), width, height, false);
        Fits(RunsPage.Of(new RunsState([]), new(width, height, false)).Text, width, height, false);
        Fits(MaterialsPage.Of(new([]), new(width, height, false)).Text, width, height, false);
    }

    [Fact]
    public void A_search_shows_what_holds_the_text()
    {
        RunSummary[] runs =
        [
            new(1, Guid.Empty, Header("Dusk glaze", "Lyric", null, "Clew"), 1, 0, 1, default),
            new(2, Guid.Empty, Header("Lantern gel", "Ledge", "lot 7", "Sail"), 1, 0, 1, default),
        ];
        var state = new RunsState([.. runs]);
        Assert.Equal(2, state.Shown.Length);
        Assert.Equal(1, state.Search("cle").Current!.Number);
        Assert.Equal(2, state.Search("LOT 7").Current!.Number);
        Assert.Null(state.Search("nothing").Current);
    }

    private static Run Header(string name, string @base, string? lot, string thickener)
        => new(new(@base), Mass.FromGrams(100)) { Name = name, Lot = lot, Thickeners = [new(thickener)] };

    private static ChartState Next(ChartState state) => ChartSteps.Next(state, new ChartEvent.Turned(), default).State;

    private static BenchTrial Trial()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Voided(1, "read on the wrong pot", "915"));
        trial.Advise();
        trial.Do(new BenchEvent.Poured("Sail", Mass.FromGrams(0.68)));
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(15);
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(23);
        trial.Advise();
        return trial;
    }

    internal static void Fits(string page, int width, int height, bool isAscii)
    {
        var lines = page.TrimEnd('\n').Split('\n');
        Assert.True(lines.Length <= height, $"{lines.Length} lines");
        Assert.Contains(lines, l => l.Trim().Length > 0);
        Assert.All(lines, l => Assert.True(PlainText.Columns(l) <= width, l));
        if (isAscii)
        {
            Assert.DoesNotContain(page, c => c is not '\n' and (< ' ' or > '~'));
        }
    }
}
