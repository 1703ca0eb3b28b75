using Viscolog.Core.Practice;
using Viscolog.Tui.Pattern;
using PracticeStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Practice.PracticeState, Viscolog.Tui.Practice.PracticeEvent>;

namespace Viscolog.Tui.Practice;

/// <summary>The choice of a practice pot as a machine.</summary>
internal static class PracticeSteps
{
    public static PracticeStep Next(PracticeState state, PracticeEvent @event, DateTimeOffset now) => @event switch
    {
        PracticeEvent.Moved moved => state with { Chosen = Math.Clamp(state.Chosen + moved.By, 0, PracticeDifficulty.All.Length - 1) },
        PracticeEvent.Called => new PracticeStep(state, new Ask<PracticeEvent>(PracticeForms.Player(state))),
        PracticeEvent.Typed typed => state with { Player = typed.Player, Seed = typed.Seed },
        PracticeEvent.Played => Show(state, context => GameScreen.On(context, state.Game, state.Player)),
        PracticeEvent.DemoCalled => Show(state, context => DemoScreen.On(context, state.Game)),
        PracticeEvent.ScoresCalled => Show(state, ScoresScreen.On),
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static PracticeStep Show(PracticeState state, Func<TuiContext, ScreenView> screen)
        => new PracticeStep(state, new Show<PracticeEvent>(screen));
}

/// <summary>What can happen on the choice of a practice pot. The set of cases is closed.</summary>
internal abstract record PracticeEvent
{
    private PracticeEvent()
    {
    }

    /// <summary>Another difficulty was chosen.</summary>
    internal sealed record Moved(int By) : PracticeEvent;

    /// <summary>Player and seed are to be typed.</summary>
    internal sealed record Called : PracticeEvent;

    /// <summary>They were.</summary>
    internal sealed record Typed(string Player, int Seed) : PracticeEvent;

    /// <summary>The pot is to be played.</summary>
    internal sealed record Played : PracticeEvent;

    /// <summary>The demonstration was called for.</summary>
    internal sealed record DemoCalled : PracticeEvent;

    /// <summary>The scores were called for.</summary>
    internal sealed record ScoresCalled : PracticeEvent;
}

/// <summary>The choice of a practice pot.</summary>
internal sealed record PracticeState
{
    /// <summary>The place of the chosen difficulty, from 0.</summary>
    public int Chosen { get; init; }

    public int Seed { get; init; } = 1;

    public string Player { get; init; } = "";

    public PracticeGame Game => PracticeGame.Of(PracticeDifficulty.All[Chosen], Seed);
}
