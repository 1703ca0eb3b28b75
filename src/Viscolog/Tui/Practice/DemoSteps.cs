using Viscolog.Core.Practice;
using Viscolog.Reports;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;
using DemoStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Practice.DemoState, Viscolog.Tui.Practice.DemoEvent>;

namespace Viscolog.Tui.Practice;

/// <summary>The demonstration as a machine.</summary>
internal static class DemoSteps
{
    public static DemoStep Open(PracticeGame game) => new(new(game), new PlayDemo(game));

    public static DemoStep Next(DemoState state, DemoEvent @event, DateTimeOffset now) => @event switch
    {
        DemoEvent.Went went => state.Go(went.By) with { Due = null },
        DemoEvent.Ran => state.Run(now),
        DemoEvent.Turned => state with { ShowsLesson = !state.ShowsLesson, Due = null, Above = default },
        DemoEvent.Scrolled scrolled => state with { Above = state.Above.By(scrolled.By) },
        DemoEvent.Exported => state.Played is { } played ? new DemoStep(state, Export(played)) : state,
        DemoEvent.Played played => state with { Played = played.Demonstration },
        DemoEvent.Told told => state with { Said = told.Said },
        DemoEvent.Ticked => state.Tick(now),
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static Export<DemoEvent> Export(Demonstration played) => new(
        PathForm.Practice("demonstration"),
        (path, replace, today) => PracticeFile.Write(PracticeWords.Named(played), path, replace, today),
        said => new DemoEvent.Told(said));
}

/// <summary>What can happen in the demonstration. The set of cases is closed.</summary>
internal abstract record DemoEvent
{
    private DemoEvent()
    {
    }

    /// <summary>Another step was called for.</summary>
    internal sealed record Went(int By) : DemoEvent;

    /// <summary>It is to run, or to stand.</summary>
    internal sealed record Ran : DemoEvent;

    /// <summary>The lesson was called for, or the players.</summary>
    internal sealed record Turned : DemoEvent;

    /// <summary>The lesson was moved.</summary>
    internal sealed record Scrolled(int By) : DemoEvent;

    /// <summary>Picture or handout is to be written.</summary>
    internal sealed record Exported : DemoEvent;

    /// <summary>What the three did is worked out.</summary>
    internal sealed record Played(Demonstration Demonstration) : DemoEvent;

    /// <summary>What became of a file, or a fault of ours.</summary>
    internal sealed record Told(string Said) : DemoEvent;

    /// <summary>Time went by.</summary>
    internal sealed record Ticked : DemoEvent;
}

/// <summary>Works out what the three do.</summary>
internal sealed record PlayDemo(PracticeGame Game) : IEffect<DemoEvent>
{
    public void Perform(IStage<DemoEvent> stage)
        => stage.Work(Say("demonstration"), () => new DemoEvent.Played(Demonstration.Of(Game)), fault => new DemoEvent.Told(fault));
}
