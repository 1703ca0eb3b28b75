using Viscolog.Core.Practice;
using Viscolog.PracticeFiles;
using Viscolog.Tests.Support;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Practice;

namespace Viscolog.Tests.Tui;

/// <summary>What the practice screens show, at the sizes that terminals have.</summary>
public class PracticePageTests
{
    private static readonly Lazy<Demonstration> Played = new(() => Demonstration.Of(PracticeGame.Of(PracticeDifficulty.Find("slow")!, 3)));

    private static readonly Lazy<PracticePath> Advised = new(() => PracticePlayers.Advised(Played.Value.Game));

    public static TheoryData<int, int, bool> Sizes => PageTests.Sizes;

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_choice_of_a_pot_is_as_stored(int width, int height, bool isAscii)
        => Check(
            "choice",
            PracticePage.Of(new PracticeState { Seed = 3, Player = "Player A", Chosen = 2 }, new(width, height, isAscii)),
            width,
            height,
            isAscii);

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_game_that_goes_on_is_as_stored(int width, int height, bool isAscii)
    {
        var trial = GameTrial.Played();
        trial.LetDown(30);
        trial.Pass(42);
        var drawn = trial.Drawn(width, height, isAscii);
        Check("game", drawn, width, height, isAscii);
        var page = drawn.Text;
        Assert.DoesNotContain("growth", page, StringComparison.Ordinal);
        Assert.DoesNotContain("settle", page, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void What_came_of_a_game_is_as_stored(int width, int height, bool isAscii)
    {
        var trial = GameTrial.Over();
        trial.Do(new GameEvent.Compared(Advised.Value));
        foreach (var view in new[] { "curve", "why", "steps" })
        {
            Check("ended-" + view, trial.Drawn(width, height, isAscii), width, height, isAscii);
            trial.Do(new GameEvent.Turned());
        }
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_demonstration_is_as_stored(int width, int height, bool isAscii)
    {
        var state = new DemoState(Played.Value.Game) { Played = Played.Value };
        Check("demo-step", DemoPage.Of(state.Go(5), new(width, height, isAscii)), width, height, isAscii);
        Check("demo-end", DemoPage.Of(state.Go(99), new(width, height, isAscii)), width, height, isAscii);
        Check(
            "demo-why",
            DemoPage.Of(state.Go(99) with { ShowsLesson = true }, new(width, height, isAscii)),
            width,
            height,
            isAscii);
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void The_score_sheet_is_as_stored(int width, int height, bool isAscii)
    {
        var over = PracticeResult.Of("Player A", GameTrial.Over().State.Path!, new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));
        var state = new ScoresState(
        [
            over,
            over with { Player = Long, Verdict = "in band", OverAtDose = null, WastedG = 0 },
        ]);
        Check("scores", ScoresPage.Of(state, new(width, height, isAscii)), width, height, isAscii);
    }

    [Theory]
    [InlineData(81, 24)]
    [InlineData(79, 17)]
    [InlineData(60, 50)]
    [InlineData(200, 16)]
    [InlineData(1, 1)]
    [InlineData(300, 100)]
    public void Any_size_is_filled_and_never_overflows(int width, int height)
    {
        var demo = new DemoState(Played.Value.Game) { Played = Played.Value };
        var trial = GameTrial.Over();
        string[] pages =
        [
            PracticePage.Of(new(), new(width, height, false)).Text, GameTrial.Played().Page(width, height), trial.Page(width, height),
                DemoPage.Of(demo, new(width, height, false)).Text,
            DemoPage.Of(demo with { Played = null }, new(width, height, false)).Text,
                ScoresPage.Of(new([]), new(width, height, false)).Text,
        ];
        Assert.All(pages, p => PageTests.Fits(p, width, height, false));
    }

    private const string Long = "Player B with a name that is far too long for any column of a sheet";

    private static void Check(string name, Page drawn, int width, int height, bool isAscii)
    {
        var page = ExpectedPage.Check(ExpectedPage.Name("practice-" + name, width, height, isAscii), drawn);
        PageTests.Fits(page, width, height, isAscii);
        if (width >= 80 && !isAscii)
        {
            // The keys are shown whole.
            Assert.False(page.TrimEnd('\n').Split('\n')[^1].EndsWith('…'), page);
        }
    }
}
