using Viscolog.Core.Practice;
using Viscolog.Tui.Practice;

namespace Viscolog.Tests.Tui;

/// <summary>The machine of a practice game, without a screen.</summary>
public sealed class GameStepsTests
{
    [Fact]
    public void Typing_pours_stirring_counts_and_the_pot_stands_in_fast_time()
    {
        var trial = new GameTrial("slow", 3);
        trial.Do(new GameEvent.Typed(""));
        Assert.Single(trial.State.Session.Lines);
        trial.Do(new GameEvent.Typed("2,5"));
        Assert.True(trial.State.Session.NeedsStirring);
        trial.Do(new GameEvent.Hurry());
        trial.Do(new GameEvent.Stir());
        trial.Pass(1.5);
        Assert.Equal(TimeSpan.FromSeconds(15), trial.State.Stirring);
        trial.Do(new GameEvent.Stir());
        Assert.Equal(TimeSpan.FromSeconds(15), trial.State.Session.Elapsed);
        trial.Pass(6);
        Assert.Equal(TimeSpan.FromSeconds(60), trial.State.Session.Standing);
        Assert.Equal(13, trial.State.Trace.Length);
        Assert.True(trial.State.Trace[^1] > trial.State.Trace[0] + 0.3);
        trial.Do(new GameEvent.Hurry());
        trial.Pass(6);
        Assert.Equal(TimeSpan.FromSeconds(66), trial.State.Session.Standing);
        trial.Do(new GameEvent.Typed(""));
        Assert.Equal(TimeSpan.FromSeconds(66), trial.State.Session.Lines[^1].Stood);
    }

    [Fact]
    public void The_same_keys_at_the_same_times_give_the_same_game_however_often_the_clock_ticks()
    {
        static GameTrial Play(int tick)
        {
            var trial = new GameTrial("slow", 3) { TickMilliseconds = tick };
            trial.Do(new GameEvent.Typed("3"));
            trial.Do(new GameEvent.Stir());
            trial.Pass(12);
            trial.Do(new GameEvent.Stir());
            trial.Pass(30);
            trial.Do(new GameEvent.Typed(""));
            return trial;
        }

        Assert.Equal(Play(200).State.Session.Moves, Play(125).State.Session.Moves);
        Assert.Equal(Play(200).State.Session.Lines[0].Shown, Play(125).State.Session.Lines[0].Shown);
    }

    [Fact]
    public void Every_event_is_answered_in_its_time()
    {
        var going = new GameTrial("slow", 3);
        going.Do(new GameEvent.Typed("3"));
        var (over, advised) = (GameTrial.Over(), PracticePlayers.Advised(going.State.Session.Game));
        (GameTrial Trial, GameEvent Event)[] all =
        [
            (going, new GameEvent.Typed("2")), (going, new GameEvent.LetDown(Core.Quantities.Mass.FromGrams(5))),
            (going, new GameEvent.Stir()), (going, new GameEvent.Hurry()), (going, new GameEvent.End()), (going, new GameEvent.Ticked()),
            (over, new GameEvent.Compared(advised)), (over, new GameEvent.Kept("kept")), (over, new GameEvent.Turned()),
            (over, new GameEvent.Moved(1)), (going, new GameEvent.LetDownCalled()), (over, new GameEvent.Again()),
                (over, new GameEvent.Exported()), (going, new GameEvent.Leaving()),
        ];
        var cases = typeof(GameEvent).GetNestedTypes(System.Reflection.BindingFlags.NonPublic);
        Assert.Equal(cases.ToHashSet(), all.Select(a => a.Event.GetType()).ToHashSet());
        Assert.All(all, a =>
        {
            var later = a.Trial.Now + TimeSpan.FromSeconds(1);
            var step = GameSteps.Next(a.Trial.State, a.Event, later);
            Assert.True(step.State != a.Trial.State || !step.Effects.IsEmpty, a.Event.ToString());
        });
    }

    [Fact]
    public void A_sleeping_machine_lets_no_pot_stand()
    {
        var trial = new GameTrial("easy", 1);
        trial.Do(new GameEvent.Typed("2"));
        trial.Do(new GameEvent.Stir());
        trial.Pass(2);
        trial.Do(new GameEvent.Stir());
        trial.Now += TimeSpan.FromHours(3);
        trial.Do(new GameEvent.Ticked());
        Assert.Equal(TimeSpan.FromSeconds(2), trial.State.Session.Standing);
    }

    [Theory]
    [InlineData("2x", "read")]
    [InlineData("-1", "expected")]
    [InlineData("500", "no more than the base weighed at first")]
    public void Wrong_grams_are_told_and_nothing_goes_in(string grams, string error)
    {
        var trial = new GameTrial("easy", 1);
        trial.Do(new GameEvent.Typed(grams));
        Assert.Contains(error, trial.State.Error, StringComparison.Ordinal);
        Assert.Empty(trial.State.Session.Moves);
        Assert.Equal(0, trial.State.Entered);
    }

    [Fact]
    public void While_it_is_stirred_nothing_else_can_be_done()
    {
        var trial = new GameTrial("easy", 1);
        trial.Do(new GameEvent.Stir());
        Assert.Contains("nothing has been added", trial.State.Error, StringComparison.Ordinal);
        trial.Do(new GameEvent.Typed("2"));
        trial.Do(new GameEvent.End());
        Assert.Contains("stir first", trial.State.Error, StringComparison.Ordinal);
        trial.Do(new GameEvent.Stir());
        trial.Do(new GameEvent.Typed("2"));
        Assert.Contains("being stirred", trial.State.Error, StringComparison.Ordinal);
        trial.Do(new GameEvent.End());
        Assert.Contains("being stirred", trial.State.Error, StringComparison.Ordinal);
        Assert.Null(trial.State.Path);
    }

    [Fact]
    public void The_end_asks_for_the_advised_way_and_keeps_a_score_only_under_a_name()
    {
        var trial = GameTrial.Over(player: "");
        Assert.IsType<GameEffect.Compare>(Assert.Single(trial.Effects));
        Assert.Contains("no score was kept", trial.State.Said, StringComparison.Ordinal);
        var named = GameTrial.Over(player: "Player A");
        Assert.Equal("Player A", named.Effects.OfType<GameEffect.Keep>().Single().Player);
        Assert.Equal(PracticeVerdict.Over, named.State.Path!.Score.Verdict);
        var moves = named.State.Session.Moves;
        named.Do(new GameEvent.Typed("1"));
        named.Do(new GameEvent.End());
        named.Do(new GameEvent.Stir());
        named.Pass(5);
        Assert.Equal(moves, named.State.Session.Moves);
        Assert.Equal(GameView.Curve, named.State.View);
        named.Do(new GameEvent.Turned());
        named.Do(new GameEvent.Turned());
        named.Do(new GameEvent.Turned());
        Assert.Equal(GameView.Curve, named.State.View);
    }

    [Fact]
    public void A_demonstration_goes_step_by_step_and_runs_by_itself_to_its_end()
    {
        var now = new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);
        var game = PracticeGame.Of(PracticeDifficulty.Find("easy")!, 7);
        var state = new DemoState(game);
        Assert.Equal(state, state.Go(1));
        state = state with { Played = Demonstration.Of(game) };
        Assert.Equal((2, 1), (state.Go(1).Go(1).Step, state.Go(1).Go(1).Go(-1).Step));
        Assert.Equal(0, state.Go(-1).Step);
        state = state.Run(now);
        Assert.Equal(0, state.Tick(now + TimeSpan.FromSeconds(1)).Step);
        for (var i = 0; i < 60 && state.Due is not null; i++)
        {
            now += DemoState.StepTime;
            state = state.Tick(now);
        }

        Assert.True(state.IsAtEnd);
        Assert.Null(state.Due);
        Assert.Equal(0, state.Run(now).Step);
    }
}
