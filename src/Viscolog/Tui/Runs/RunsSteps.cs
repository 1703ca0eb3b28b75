using Viscolog.Tui.Batches;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.Practice;
using RunsStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Runs.RunsState, Viscolog.Tui.Runs.RunsEvent>;

namespace Viscolog.Tui.Runs;

/// <summary>The list of runs as a machine.</summary>
internal static class RunsSteps
{
    public static RunsStep Next(RunsState state, RunsEvent @event, DateTimeOffset now) => @event switch
    {
        RunsEvent.Moved moved => state.Move(moved.By),
        RunsEvent.Searched searched => state.Search(searched.Text),
        RunsEvent.Marked => state.Mark().Move(1),
        RunsEvent.Opened => state.Current is { } run ? new RunsStep(state, new RunsEffect.Open(run.Number)) : state,
        RunsEvent.Begun => new RunsStep(state, new RunsEffect.Begin(state.All is [var latest, ..] ? latest.Number : null)),
        RunsEvent.Compared => new RunsStep(state, new RunsEffect.Compare(state.Meant)),
        RunsEvent.Exported => new RunsStep(state, new RunsEffect.WriteFiles(state.Meant)),
        RunsEvent.Checked => state.Current is { } run
            ? Show(state, context => CheckScreen.On(context, context.Log.Run(run.Number)!))
            : state,
        RunsEvent.TrendCalled
            => Show(state, context => TrendScreen.On(context, state.Current?.Header.Product ?? state.Current?.Header.Name)),
        RunsEvent.MaterialsCalled => Show(state, MaterialsScreen.On),
        RunsEvent.PracticeLogCalled => state is { All.IsEmpty: true, IsPractice: false }
            ? new RunsStep(state, new RunsEffect.Practise(RunsScreen.On))
            : state,
        RunsEvent.PotsCalled => new RunsStep(state, new RunsEffect.Practise(PracticeScreen.On)),
        RunsEvent.Sorted => state.Sort(),
        RunsEvent.Copied => new RunsStep(
            state with { Said = Say("copied: the list as it is shown") },
            new Copy<RunsEvent>(string.Join('\n', state.Shown.Select(r => string.Join('\t', RunsState.Cells(r)))))),
        RunsEvent.ArchiveTurned => state with { ShowsArchived = !state.ShowsArchived, Chosen = 0 },
        RunsEvent.PutAway => state.Current is { } run ? new RunsStep(state, new RunsEffect.PutAway(run.Number, !run.IsArchived)) : state,
        RunsEvent.TableCalled => new RunsStep(state, new RunsEffect.Tabulate(state.Meant)),
        RunsEvent.Replayed => state.Current is { } run
            ? new RunsStep(state with { Said = Say("going through it reading by reading") }, new RunsEffect.Replay(run.Number))
            : state,
        RunsEvent.ReplayMade made => Show(state with { Said = "" }, context => HelpScreen.On(context, made.Title, made.Lines)),
        RunsEvent.Listed listed => state with { All = listed.List.All, Said = "" },
        RunsEvent.Told told => state with { Said = told.Said },
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static RunsStep Show(RunsState state, Func<TuiContext, ScreenView> screen) => new RunsStep(state, new Show<RunsEvent>(screen));
}

/// <summary>What can happen on the list of runs. The set of cases is closed.</summary>
internal abstract record RunsEvent
{
    private RunsEvent()
    {
    }

    /// <summary>Another run was chosen.</summary>
    internal sealed record Moved(int By) : RunsEvent;

    /// <summary>The filter was typed into.</summary>
    internal sealed record Searched(string Text) : RunsEvent;

    /// <summary>The chosen run was marked, or unmarked.</summary>
    internal sealed record Marked : RunsEvent;

    /// <summary>The chosen run is to be opened.</summary>
    internal sealed record Opened : RunsEvent;

    /// <summary>A run is to be begun.</summary>
    internal sealed record Begun : RunsEvent;

    /// <summary>The marked runs are to be compared.</summary>
    internal sealed record Compared : RunsEvent;

    /// <summary>They are to be exported.</summary>
    internal sealed record Exported : RunsEvent;

    /// <summary>The chosen run is to be checked.</summary>
    internal sealed record Checked : RunsEvent;

    /// <summary>The trend of the chosen run's product was called for.</summary>
    internal sealed record TrendCalled : RunsEvent;

    /// <summary>The materials were called for.</summary>
    internal sealed record MaterialsCalled : RunsEvent;

    /// <summary>The practice log was called for, where this one has no run.</summary>
    internal sealed record PracticeLogCalled : RunsEvent;

    /// <summary>The practice pots were called for.</summary>
    internal sealed record PotsCalled : RunsEvent;

    /// <summary>The list is to be copied.</summary>
    internal sealed record Copied : RunsEvent;

    /// <summary>Another order was called for.</summary>
    internal sealed record Sorted : RunsEvent;

    /// <summary>Runs that were put away are to be shown, or hidden.</summary>
    internal sealed record ArchiveTurned : RunsEvent;

    /// <summary>The chosen run is to be put away, or brought back.</summary>
    internal sealed record PutAway : RunsEvent;

    /// <summary>The thickeners of the marked runs are to be compared.</summary>
    internal sealed record TableCalled : RunsEvent;

    /// <summary>The chosen run is to be gone through again.</summary>
    internal sealed record Replayed : RunsEvent;

    /// <summary>It was gone through.</summary>
    internal sealed record ReplayMade(string Title, Func<int, IEnumerable<string>> Lines) : RunsEvent;

    /// <summary>The log's runs as they are now.</summary>
    internal sealed record Listed(RunsState List) : RunsEvent;

    /// <summary>What became of something.</summary>
    internal sealed record Told(string Said) : RunsEvent;
}
