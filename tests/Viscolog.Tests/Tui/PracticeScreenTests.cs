using Terminal.Gui.Input;
using Viscolog.Core.Practice;
using Viscolog.Store;
using Viscolog.Tests.Store;
using Viscolog.Tui.Practice;

namespace Viscolog.Tests.Tui;

/// <summary>The practice screens on a driver without a terminal.</summary>
public sealed class PracticeScreenTests
{
    [Fact]
    public void A_practice_pot_is_played_by_keys_and_its_score_kept_beside_the_log()
    {
        using var bench = Bench.Filled();
        var before = new Snapshot(bench.Place);
        using (var log = PracticeLog.Open(bench.Place, TimeProvider.System).Made!)
        {
            using var stage = new ScreenTests.Stage(80, 24);
            using var screen = GameScreen.On(
                new(log, TimeProvider.System, new(hasColor: true), IsAscii: false, IsPractice: true),
                PracticeGame.Of(PracticeDifficulty.Find("easy")!, 7),
                "Player A");
            stage.Show(screen);
            stage.Press(Key.Enter);
            stage.Type("9");
            stage.Press(Key.Enter, Key.Enter);
            Assert.Contains("! stir it in first", stage.Text, StringComparison.Ordinal);
            stage.Press(Key.F3, Key.F3, Key.Enter, Key.F8);
            Assert.Contains("Ends over", stage.Text, StringComparison.Ordinal);
            stage.WaitFor(() => screen.State.Advised is not null);
            Assert.Contains("B advised", stage.Text, StringComparison.Ordinal);
            Assert.Contains("score kept under Player A", stage.Text, StringComparison.Ordinal);
            stage.Press(Key.F6);
            Assert.Contains("Dose 1 took the pot over", stage.Text, StringComparison.Ordinal);
            stage.Press(Key.F5);
            Assert.Null(screen.State.Path);
            stage.End();
        }

        var kept = Assert.Single(PracticeScores.Beside(bench.Place).All().Results);
        Assert.Equal(("Player A", "easy", 7, "over", 1), (kept.Player, kept.Pot, kept.Seed, kept.Verdict, kept.Doses));
        Assert.NotEmpty(before.Paths);
        Assert.All(before.Paths, f => Assert.Equal(before.Bytes(f), File.ReadAllBytes(f)));
    }

    [Fact]
    public void The_demonstration_runs_by_keys()
    {
        using var bench = new Bench();
        using var log = bench.Open();
        using var stage = new ScreenTests.Stage(120, 40);
        using var screen = DemoScreen.On(
            new(log, TimeProvider.System, new(hasColor: true), IsAscii: false, IsPractice: true),
            PracticeGame.Of(PracticeDifficulty.Find("easy")!, 7));
        stage.Show(screen);
        stage.WaitFor(() => screen.State.Played is not null);
        stage.Press(Key.Enter, Key.Enter, Key.CursorLeft);
        Assert.Contains("Step 1 of", stage.Text, StringComparison.Ordinal);
        stage.Press(Key.F6);
        Assert.Contains("Letting down costs base", stage.Text, StringComparison.Ordinal);
        stage.Press(Key.F6, Key.F3);
        Assert.Contains("running", stage.Text, StringComparison.Ordinal);
        stage.End();
    }
}
