using System.Collections.Immutable;
using Viscolog.Text;
using PickStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Pattern.PickState, Viscolog.Tui.Pattern.PickEvent>;

namespace Viscolog.Tui.Pattern;

/// <summary>A list to pick one from; typing narrows it down.</summary>
internal static class PickScreen
{
    internal static readonly KeyTable<PickEvent> Keys = new(
        "List",
        new("Up/Down", "choose", "choose", new PickEvent.Moved(-1), new PickEvent.Moved(1)),
        new("PgUp/PgDn", null, "ten up or down", new PickEvent.Moved(-10), new PickEvent.Moved(10)),
        new("Home/End", null, "the first, the last", new PickEvent.Moved(-Scrolling.ToEnd), new PickEvent.Moved(Scrolling.ToEnd)),
        new("Enter", "take it", "take the chosen one", new PickEvent.Taken()),
        new("Esc", "back", "back") { Role = KeyRole.Leaves },
        new("^Q", null, "quit") { Role = KeyRole.Quits });

    /// <summary>Before the field.</summary>
    private static string Search => Say(" search ");

    public static ScreenView<PickState, PickEvent> On(TuiContext context, string title, ImmutableArray<string> all, string chosen)
        => new(
            context,
            new(_ => Keys, Next, PageOf) { Fields = new(1, Fields) { Changed = text => new PickEvent.Searched(text) } },
            new PickState(title, all) { Chosen = Math.Max(0, all.IndexOf(chosen)) });

    public static PickStep Next(PickState state, PickEvent @event, DateTimeOffset now) => @event switch
    {
        PickEvent.Moved moved => state with { Chosen = Scrolling.Moved(state.Place, moved.By, state.Shown.Length) },
        PickEvent.Searched searched => searched.Text == state.Filter ? state : state with { Filter = searched.Text, Chosen = 0 },
        PickEvent.Taken
            => state.Shown.IsEmpty ? state : new PickStep(state with { Picked = state.Shown[state.Place] }, new Close<PickEvent>()),
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    public static Page PageOf(PickState state, Canvas canvas) => Page.Of(canvas, Say("the list"), page =>
    {
        page.Add(" " + state.Title, Tone.Strong);
        page.Add("");
        var rows = page.Height - 3 - page.Lines.Count;
        var first = Page.First(state.Place, state.Shown.Length, rows);
        foreach (var (text, place) in state.Shown.Select((t, i) => (t, i)).Skip(first).Take(rows))
        {
            var isChosen = place == state.Place;
            page.Add($" {(isChosen ? page.ChosenMark : " ")} {text}", isChosen ? Tone.Chosen : Tone.Plain);
        }

        page.FillTo(page.Height - 2);
        page.Add(Search);
        page.Add(Keys.Footer(page.Width, page.IsAscii), Tone.Dim);
    });

    private static ImmutableArray<(int X, int Width)> Fields(PickState state, int width, int height)
        => width < Page.LeastWidth || height < Page.LeastHeight ? [] : [(PlainText.Columns(Search), 30)];
}

/// <summary>A list to pick from.</summary>
/// <param name="Title">What is picked.</param>
/// <param name="All">What there is.</param>
internal sealed record PickState(string Title, ImmutableArray<string> All)
{
    public string Filter { get; init; } = "";

    public int Chosen { get; init; }

    /// <summary>What was taken; null where nothing was.</summary>
    public string? Picked { get; init; }

    public ImmutableArray<string> Shown => Filter.Trim() is { Length: > 0 } text
        ? [.. All.Where(a => a.Contains(text, StringComparison.OrdinalIgnoreCase))] : All;

    public int Place => Math.Clamp(Chosen, 0, Math.Max(0, Shown.Length - 1));
}

/// <summary>What can happen on such a list. The set of cases is closed.</summary>
internal abstract record PickEvent
{
    private PickEvent()
    {
    }

    /// <summary>Another one was chosen.</summary>
    internal sealed record Moved(int By) : PickEvent;

    /// <summary>The filter was typed into.</summary>
    internal sealed record Searched(string Text) : PickEvent;

    /// <summary>The chosen one is taken.</summary>
    internal sealed record Taken : PickEvent;
}
