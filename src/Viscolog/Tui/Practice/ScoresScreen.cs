using System.Collections.Immutable;
using Viscolog.Output;
using Viscolog.PracticeFiles;
using Viscolog.Store;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;
using ScoresStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Practice.ScoresState, Viscolog.Tui.Practice.ScoresEvent>;

namespace Viscolog.Tui.Practice;

/// <summary>The class's score sheet.</summary>
internal static class ScoresScreen
{
    public static KeyTable<ScoresEvent> Keys { get; } = new(
        "Scores",
        new("Up/Down", "move", "move", new ScoresEvent.Moved(-1), new ScoresEvent.Moved(1)),
        new("PgUp/PgDn", null, "ten up or down", new ScoresEvent.Moved(-10), new ScoresEvent.Moved(10)),
        new("Home/End", null, "the first, the last", new ScoresEvent.Moved(-Scrolling.ToEnd), new ScoresEvent.Moved(Scrolling.ToEnd)),
        new("F7", "export CSV", "export the scores as CSV", new ScoresEvent.Exported()),
        new("Esc", "back", "back") { Role = KeyRole.Leaves },
        new("^Q", "quit", "quit") { Role = KeyRole.Quits });

    public static ScreenView<ScoresState, ScoresEvent> On(TuiContext context)
    {
        var (results, warnings) = new PracticeScores(context.Log.Place.Folder).All();
        var said = warnings.IsEmpty ? "" : Say($"{Count.Of(warnings.Length, Say("file"), Say("files"))} left out: {warnings[0]}");
        return new(context, new(_ => Keys, ScoresSteps.Next, ScoresPage.Of), new ScoresState(results) { Said = said });
    }
}

/// <summary>What can happen on the score sheet. The set of cases is closed.</summary>
internal abstract record ScoresEvent
{
    private ScoresEvent()
    {
    }

    /// <summary>The sheet was moved.</summary>
    internal sealed record Moved(int By) : ScoresEvent;

    /// <summary>The sheet is to be written to a file.</summary>
    internal sealed record Exported : ScoresEvent;

    /// <summary>What became of the file.</summary>
    internal sealed record Told(string Said) : ScoresEvent;
}

/// <summary>The class's score sheet.</summary>
/// <param name="Results">The games, in the order in which they ended.</param>
internal sealed record ScoresState(ImmutableArray<PracticeResult> Results)
{
    /// <summary>Games above the screen.</summary>
    public int Above { get; init; }

    public string Said { get; init; } = "";
}

/// <summary>The score sheet as a machine.</summary>
internal static class ScoresSteps
{
    public static ScoresStep Next(ScoresState state, ScoresEvent @event, DateTimeOffset now) => @event switch
    {
        ScoresEvent.Moved moved => state with { Above = Scrolling.Moved(state.Above, moved.By, state.Results.Length) },
        ScoresEvent.Exported => new ScoresStep(
            state,
            new Export<ScoresEvent>(
                PathForm.Scores(), (path, replace, _) => Write(state.Results, path, replace), said => new ScoresEvent.Told(said))),
        ScoresEvent.Told told => state with { Said = told.Said },
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static Outcome<string> Write(ImmutableArray<PracticeResult> results, string path, bool replace)
    {
        using var stream = new MemoryStream();
        PracticeSheet.Write(results, stream);
        return NamedFile.Write(path, replace, stream.ToArray);
    }
}
