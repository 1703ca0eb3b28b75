using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Practice;

namespace Viscolog.Tests.Tui;

/// <summary>A practice game's machine with a clock that the test moves.</summary>
internal sealed class GameTrial
{
    public GameTrial(string pot, int seed, string player = "Player A")
        => State = GameSteps.Open(PracticeGame.Of(PracticeDifficulty.Find(pot)!, seed), player, Now);

    public DateTimeOffset Now { get; set; } = new(2026, 3, 2, 9, 0, 0, TimeSpan.FromHours(1));

    public int TickMilliseconds { get; init; } = 200;

    public GameState State { get; private set; }

    public List<IEffect<GameEvent>> Effects { get; } = [];

    /// <summary>A game on the pot 'slow 3' that went over: read too early, then too much.</summary>
    public static GameTrial Over(string player = "Player A")
    {
        var trial = Played(player);
        trial.Do(new GameEvent.End());
        return trial;
    }

    /// <summary>The same game before its end.</summary>
    public static GameTrial Played(string player = "Player A")
    {
        var trial = new GameTrial("slow", 3, player);
        trial.Do(new GameEvent.Typed(""));
        foreach (var (grams, stand) in new[] { ("3", 20.0), ("4", 12.0), ("2", 60.0) })
        {
            trial.Do(new GameEvent.Typed(grams));
            trial.Do(new GameEvent.Stir());
            trial.Pass(10);
            trial.Do(new GameEvent.Stir());
            trial.Pass(stand);
            trial.Do(new GameEvent.Typed(""));
        }

        return trial;
    }

    public void Do(GameEvent @event)
    {
        var step = GameSteps.Next(State, @event, Now);
        State = step.State;
        Effects.AddRange(step.Effects);
    }

    /// <summary>Lets the clock tick for so many seconds.</summary>
    public void Pass(double seconds)
    {
        var (left, tick) = (TimeSpan.FromMilliseconds((long)(1000 * seconds)), TimeSpan.FromMilliseconds(TickMilliseconds));
        while (left > TimeSpan.Zero)
        {
            var passed = left < tick ? left : tick;
            Now += passed;
            left -= passed;
            Do(new GameEvent.Ticked());
        }
    }

    public Page Drawn(int width, int height, bool isAscii = false) => GamePage.Of(State, new(width, height, isAscii));

    public string Page(int width, int height, bool isAscii = false) => Drawn(width, height, isAscii).Text + "\n";

    /// <summary>Lets down with base and stirs.</summary>
    public void LetDown(double grams)
    {
        Do(new GameEvent.LetDown(Mass.FromGrams(grams)));
        Do(new GameEvent.Stir());
        Pass(10);
        Do(new GameEvent.Stir());
    }
}
