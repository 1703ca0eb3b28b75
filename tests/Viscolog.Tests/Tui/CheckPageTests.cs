using System.Collections.Concurrent;
using Viscolog.Core.Checking;
using Viscolog.MaterialFiles;
using Viscolog.OilFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tables;
using Viscolog.Tests.RunFiles;
using Viscolog.Tests.Support;
using Viscolog.Tui.Batches;

using static Viscolog.Languages.Tongue;

namespace Viscolog.Tests.Tui;

/// <summary>What the screens of check and trend show, at the sizes that terminals have.</summary>
public class CheckPageTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private static readonly ConcurrentDictionary<string, CheckOutcome> Outcomes = new(StringComparer.Ordinal);

    public static TheoryData<int, int, bool> Sizes => PageTests.Sizes;

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_check_is_as_stored(int width, int height, bool isAscii)
    {
        foreach (var name in new[] { "lantern-gel-21", "lantern-gel-22-short", "lantern-gel-23-low-ph" })
        {
            var state = Answered(State(name));
            var page = ExpectedPage.Check(
                ExpectedPage.Name("check-" + name, width, height, isAscii), CheckPage.Of(state, new(width, height, isAscii)));
            PageTests.Fits(page, width, height, isAscii);
            PageTests.Fits(
                CheckPage.Of(CheckSteps.Next(state, new CheckEvent.Scrolled(5), default).State, new(width, height, isAscii)).Text,
                width,
                height,
                isAscii);
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_trend_is_as_stored(int width, int height, bool isAscii)
    {
        var state = Trend();
        foreach (var (name, shown) in new[] { ("log", state), ("linear", TrendSteps.Next(state, new TrendEvent.Turned(), default).State) })
        {
            var page = ExpectedPage.Check(
                ExpectedPage.Name("trend-" + name, width, height, isAscii), TrendPage.Of(shown, new(width, height, isAscii)));
            PageTests.Fits(page, width, height, isAscii);
        }
    }

    [Theory]
    [InlineData(81, 24)]
    [InlineData(79, 17)]
    [InlineData(200, 16)]
    [InlineData(1, 1)]
    [InlineData(300, 100)]
    public void Any_size_is_filled_and_never_overflows(int width, int height)
    {
        PageTests.Fits(CheckPage.Of(Answered(State("harbour-gel-09-over")), new(width, height, false)).Text, width, height, false);
        PageTests.Fits(CheckPage.Of(State("harbour-gel-09-over"), new(width, height, false)).Text, width, height, false);
        PageTests.Fits(TrendPage.Of(Trend(), new(width, height, false)).Text, width, height, false);
        PageTests.Fits(TrendPage.Of(TrendState.Of([], null), new(width, height, false)).Text, width, height, false);
        PageTests.Fits(
            TrendPage.Of(Trend() with { Trend = new([], [("run 4", new ValueGap.NotRead())]) }, new(width, height, false)).Text,
            width,
            height,
            false);
    }

    [Fact]
    public void The_runs_product_comes_first_then_its_own_target_and_another_is_asked_for()
    {
        var state = State("lantern-gel-21");
        Assert.Equal(
            ["Lantern gel", Say("target of the run"), "Harbour gel"],
            state.Specifications.Select(s => s.Name),
            StringComparer.Ordinal);
        var moved = CheckSteps.Next(Answered(state), new CheckEvent.Chose(1), default);
        Assert.Equal((1, null), (moved.State.Chosen, moved.State.Outcome));
        Assert.Equal(Say("target of the run"), Assert.IsType<WorkOutCheck>(Assert.Single(moved.Effects)).Specification.Name);
        Assert.Equal(
            new CheckOutcome.Refused(new CheckRefusal.AsksForNothing("right")),
            CheckSteps.Next(
                moved.State,
                new CheckEvent.Answered(new CheckOutcome.Refused(new CheckRefusal.AsksForNothing("right")), null),
                default).State.Outcome);
        Assert.Empty(CheckSteps.Next(moved.State, new CheckEvent.Chose(0), default).Effects);
        Assert.Equal(default, CheckSteps.Next(state, new CheckEvent.Scrolled(-5), default).State.Passed);
    }

    [Fact]
    public void Without_target_and_specifications_it_says_what_is_missing()
    {
        var run = Logged("lantern-gel-21");
        var state = CheckState.Of(
            run with { File = run.File with { Run = run.File.Run with { Target = null } } },
            BenchKnowledge.None,
            Today);
        Assert.Contains(
            Say("against nothing: the run has no target, and the log no specification")[..40],
            CheckPage.Of(state, new(80, 24, false)).Text,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_trend_opens_on_the_runs_product()
    {
        var materials = Bench().Materials;
        Assert.Equal("Lantern gel", TrendState.Of(materials, "Lantern gel 22").Current!.Name);
        Assert.Equal("Harbour gel", TrendState.Of(materials, null).Current!.Name);
        Assert.Null(TrendState.Of([], "x").Current);
    }

    private static CheckState State(string name) => CheckState.Of(Logged(name), Bench(), Today);

    private static CheckState Answered(CheckState state)
    {
        var run = state.Run.File.Run;
        var outcome = Outcomes.GetOrAdd(run.Name!, _ => BatchChecks.Of(Bench().Request(run, state.Current!, [], state.Today)));
        return state with { Outcome = outcome };
    }

    private static TrendState Trend()
    {
        var read = Assert.IsType<Tables.TableOutcome<Viscolog.TrendFiles.TrendFile>.Read>(TrendFiles.TrendFileReader.Read(
            Checkout.Sample("trend/lantern-gel-batches.csv"),
            null));
        var state = TrendState.Of(Bench().Materials, "Lantern gel");
        return state with { Trend = new(read.File.Points, [("Lantern gel 25", new ValueGap.NotRead())]) };
    }

    private static LoggedRun Logged(string name)
    {
        var file = FileText.Read(File.ReadAllText(Checkout.Sample($"checks/{name}.csv")));
        return new(1, file, [.. Enumerable.Range(1, file.Contents().Count())]);
    }

    private static BenchKnowledge Bench()
    {
        var materials = Assert.IsType<TableOutcome<MaterialFile>.Read>(MaterialFileReader.Parse(
            "m",
            File.ReadAllBytes(Checkout.Sample("materials/workshop.csv")))).File.Rows;
        var oils = Assert.IsType<TableOutcome<OilFile>.Read>(OilFileReader.Parse(
            "o",
            File.ReadAllBytes(Checkout.Sample("oils/workshop-oils.csv")))).File.Rows;
        return new([.. materials.Select(m => m.Material)], [.. oils.Select(o => o.Reading)]);
    }
}
