using System.Collections.Immutable;
using Viscolog.Feeds;

namespace Viscolog.Tui.Pattern;

/// <summary>What a screen is: its keys, its steps and its page, all of them pure.</summary>
/// <param name="Keys">The keys of a state.</param>
/// <param name="Next">What an event makes of a state.</param>
/// <param name="Page">What a state looks like.</param>
internal sealed record ScreenPlan<TState, TEvent>(
    Func<TState, KeyTable<TEvent>> Keys,
    Func<TState, TEvent, DateTimeOffset, Step<TState, TEvent>> Next,
    Func<TState, Canvas, Page> Page)
    where TState : class
    where TEvent : class
{
    /// <summary>The event of time going by; null where the screen takes no notice of it.</summary>
    public TEvent? Ticked { get; init; }

    /// <summary>What a page shows that changes as time goes by, though the state does not.</summary>
    public Func<TState, DateTimeOffset, string> ShownOfTime { get; init; } = (_, _) => "";

    /// <summary>The event of the computer's clock having gone on by so much more or less than time did; null where nobody cares.</summary>
    public Func<TimeSpan, TEvent>? Jumped { get; init; }

    /// <summary>The event that is sent instead of leaving, the first time; null from it where the screen may be left.</summary>
    public Func<TState, TEvent?> Leaving { get; init; } = _ => null;

    /// <summary>The event of a click on a row of a page of so many rows; null from it where nothing is there to choose.</summary>
    public Func<TState, int, int, TEvent?> Clicked { get; init; } = (_, _, _) => null;

    /// <summary>The event of several lines being pasted; null where only the first is taken, into the field.</summary>
    public Func<ImmutableArray<string>, TEvent>? Pasted { get; init; }

    /// <summary>The event of an instrument having told something; null where the screen does not listen.</summary>
    public Func<FeedEvent, TEvent>? Heard { get; init; }

    public FieldPlan<TState, TEvent>? Fields { get; init; }
}

/// <summary>What a page is drawn on, and when.</summary>
internal sealed record Canvas(int Width, int Height, bool IsAscii, DateTimeOffset Now = default)
{
    /// <summary>How sharing with other benches stands; empty where the log is not shared.</summary>
    public string Shared { get; init; } = "";
}

/// <summary>The fields of a screen, in its last row but one.</summary>
/// <param name="Count">How many.</param>
/// <param name="Places">Where each begins and how wide it is, for a width and a height; none where they are not shown.</param>
internal sealed record FieldPlan<TState, TEvent>(int Count, Func<TState, int, int, ImmutableArray<(int X, int Width)>> Places)
{
    /// <summary>A number of the state; the fields are emptied where it changes.</summary>
    public Func<TState, int> Entered { get; init; } = _ => 0;

    /// <summary>A text for the first field, with a number that changes with each; it goes over nothing that was typed.</summary>
    public Func<TState, (int Number, string Text)> Filled { get; init; } = _ => (0, "");

    /// <summary>Whether the first field is asked about; when that begins it is chosen, with all of its text, to be typed anew.</summary>
    public Func<TState, bool> Doubted { get; init; } = _ => false;

    /// <summary>The event of a text that was changed; null where none is wanted.</summary>
    public Func<string, TEvent>? Changed { get; init; }
}
