using System.Collections.Immutable;
using Viscolog.Core.Checking;
using Viscolog.Feeds;
using Viscolog.MaterialFiles;
using Viscolog.Text;
using Viscolog.Tui.Pattern;
using LearnStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Materials.LearnState, Viscolog.Tui.Materials.LearnEvent>;

namespace Viscolog.Tui.Materials;

/// <summary>The lines of an instrument as they come, and what is made of them; a person says what some of them mean.</summary>
internal static class LearnScreen
{
    public static KeyTable<LearnEvent> Keys { get; } = new(
        "Instrument",
        new("Up/Down", null, "choose a line", new LearnEvent.Moved(-1), new LearnEvent.Moved(1)),
        new("Enter", "what it means", "say what the chosen line means", new LearnEvent.Asked()),
        new("F2", "keep", "keep the instrument in the log as it is read now", new LearnEvent.Kept()),
        new("F5", "begin again", "forget what was said of the lines", new LearnEvent.Forgotten()),
        new("F1", "help", "") { Role = KeyRole.Helps },
        new("Esc", "back", "back") { Role = KeyRole.Leaves },
        new("^Q", null, "quit") { Role = KeyRole.Quits })
    {
        Above =
        [
            "Lines stand here as they come. Choose one whose display you have read, press Enter and say what it means, such as "
            + "8420 mPa·s at 23.1 °C. One line may do; three with different values leave no doubt. F2 keeps the instrument.",
        ],
    };

    private static readonly ScreenPlan<LearnState, LearnEvent> Plan = new(_ => Keys, LearnSteps.Next, Draw)
    {
        Heard = told => new LearnEvent.Heard(told),
    };

    public static ScreenView<LearnState, LearnEvent> On(TuiContext context, string name, LineSource source)
        => new(context, Plan, new LearnState(name, source));

    public static Page Draw(LearnState state, Canvas canvas) => Page.Of(canvas, Say("the instrument"), page =>
    {
        page.Add(
            new Piece($" {state.Name}", Tone.Strong),
            new Piece($" · {state.Source.Name}{(state.Wire.Length > 0 ? " · " + state.Wire : "")}"));
        foreach (var line in Paragraph.Of(Understanding(state), page.Width - 2).Take(3))
        {
            page.Add(" " + line, state.Pattern is null ? Tone.Caution : Tone.Good);
        }

        page.Add("");
        var rows = page.Height - 2 - page.Lines.Count;
        var first = Page.First(state.Place, state.Lines.Length, rows);
        var half = (page.Width - 6) / 2;
        foreach (var (line, place) in state.Lines.Select((l, i) => (l, i)).Skip(first).Take(rows))
        {
            var isChosen = place == state.Place;
            page.Add(new Piece(
                $" {(isChosen ? page.ChosenMark : " ")} {page.Fit(Shown(line), half)}  {page.Fit(Said(state, line), half)}",
                isChosen ? Tone.Chosen : Tone.Plain));
        }

        if (state.Lines.IsEmpty)
        {
            page.Add("   " + Say("no line yet"));
        }

        page.Foot(state.Said, Keys);
    });

    private static string Understanding(LearnState state) => state switch
    {
        { Pattern: { } pattern } => Say(
            $"{pattern.Show()} (from {Wording.Count.Of(state.Examples.Length, Say("line"), Say("lines"))})"),
        { Open: { } open } => open,
        _ => Say("Choose a line and press Enter to say what it means."),
    };

    private static string Shown(string line) => TerminalText.Of(OneLine.Of(line)).Trim();

    private static string Said(LearnState state, string line) => state.Pattern?.Read(line) switch
    {
        LineOutcome.Understood read => string.Join("  ", read.Words) + (read.IsStable == true ? "  " + Say("stable") : ""),
        LineOutcome.Misread misread => misread.Reason,
        _ => "",
    };
}

/// <summary>An instrument while it is learned.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Source">Where its lines come from.</param>
internal sealed record LearnState(string Name, LineSource Source)
{
    /// <summary>Older lines are let go.</summary>
    public const int MostLines = 200;

    /// <summary>The lines, the latest last.</summary>
    public ImmutableArray<string> Lines { get; init; } = [];

    /// <summary>The chosen line; null for the latest.</summary>
    public int? Chosen { get; init; }

    /// <summary>What was said of some of them.</summary>
    public ImmutableArray<LineExample> Examples { get; init; } = [];

    /// <summary>What was learned; null while nothing is.</summary>
    public LinePattern? Pattern { get; init; }

    /// <summary>Why nothing was learned yet; null where nothing is in the way.</summary>
    public string? Open { get; init; }

    /// <summary>How the wire stands.</summary>
    public string Wire { get; init; } = "";

    public string Said { get; init; } = "";

    public int Place => Math.Clamp(Chosen ?? Lines.Length - 1, 0, Math.Max(0, Lines.Length - 1));
}

/// <summary>The screen of an instrument as a machine.</summary>
internal static class LearnSteps
{
    public static LearnStep Next(LearnState state, LearnEvent @event, DateTimeOffset now) => @event switch
    {
        LearnEvent.Heard { Event: FeedEvent.Raw raw } => Hear(state, raw.Line),
        LearnEvent.Heard { Event: FeedEvent.Told { State: FeedState.Open or FeedState.Back } } => state with { Wire = "" },
        LearnEvent.Heard { Event: FeedEvent.Told told } => state with { Wire = told.Words },
        LearnEvent.Heard => state,
        LearnEvent.Moved moved
            => state.Lines.IsEmpty ? state : state with { Chosen = Scrolling.Moved(state.Place, moved.By, state.Lines.Length) },
        LearnEvent.Asked => state.Lines.IsEmpty
            ? state with { Said = Say("no line has come yet") }
            : new LearnStep(state with { Chosen = state.Place }, new Ask<LearnEvent>(LearnForms.Meaning(state.Lines[state.Place]))),
        LearnEvent.Meant meant
            => Learn(state with { Examples = [.. state.Examples.Where(e => e.Line != meant.Example.Line), meant.Example], Chosen = null }),
        LearnEvent.Forgotten => state with { Examples = [], Pattern = null, Open = null, Said = "" },
        LearnEvent.Kept => state.Pattern is { } pattern
            ? new LearnStep(state, new KeepInstrument(new Material.OfInstrument(state.Name, pattern.Show(), state.Source.Name)))
            : state with { Said = Say("nothing is learned yet: say what a line means first") },
        LearnEvent.Told told => state with { Said = told.Words },
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static LearnStep Hear(LearnState state, string line)
    {
        var gone = Math.Max(0, state.Lines.Length + 1 - LearnState.MostLines);
        return state with
        {
            Lines = [.. state.Lines.Skip(gone), line],
            Chosen = state.Chosen is { } chosen ? Math.Max(0, chosen - gone) : null,
        };
    }

    private static LearnStep Learn(LearnState state)
    {
        var pattern = LineLessons.Learn(state.Examples, out var open);
        return state with { Pattern = pattern, Open = open, Said = "" };
    }
}

/// <summary>What can happen on the screen of an instrument. The set of cases is closed.</summary>
internal abstract record LearnEvent
{
    private LearnEvent()
    {
    }

    /// <summary>The instrument told something.</summary>
    internal sealed record Heard(FeedEvent Event) : LearnEvent;

    /// <summary>Another line was chosen.</summary>
    internal sealed record Moved(int By) : LearnEvent;

    /// <summary>What the chosen line means is to be said.</summary>
    internal sealed record Asked : LearnEvent;

    /// <summary>It was said.</summary>
    internal sealed record Meant(LineExample Example) : LearnEvent;

    /// <summary>What was said is to be forgotten.</summary>
    internal sealed record Forgotten : LearnEvent;

    /// <summary>The instrument is to be kept.</summary>
    internal sealed record Kept : LearnEvent;

    /// <summary>What became of it.</summary>
    internal sealed record Told(string Words) : LearnEvent;
}

/// <summary>Keeps an instrument in the log.</summary>
internal sealed record KeepInstrument(Material.OfInstrument Instrument) : IEffect<LearnEvent>
{
    public void Perform(IStage<LearnEvent> stage)
        => stage.Send(new LearnEvent.Told(TuiContext.Words(
            stage.Context.Log.State([new MaterialRow(Instrument, ImmutableSortedDictionary<string, string>.Empty)]).Outcome,
            Say($"{Instrument.Name}; 'viscolog bench --listen {Instrument.Name}' listens to it"))));
}

/// <summary>The forms of an instrument that is learned.</summary>
internal static class LearnForms
{
    /// <summary>Which instrument, and where its lines come from.</summary>
    public static Form<MaterialsEvent> Source(Material.OfInstrument? kept) => new(
        Say("See what an instrument sends"),
        Say("A source is serial:PORT@BAUD,8N1, tcp:HOST:PORT or file:PATH."),
        [new(Say("name"), kept?.Name ?? ""), new(Say("source"), kept?.Source ?? "serial:/dev/ttyUSB0@9600")],
        texts => !MaterialKind.CanName(MaterialKind.Instrument, texts[0].Trim())
            ? FormAnswer<MaterialsEvent>.Wrong(0, Say($"name: {MaterialKind.NameAdvice(MaterialKind.Instrument)}"))
            : LineSource.Read(texts[1], out var error) is not { } source
                ? FormAnswer<MaterialsEvent>.Wrong(1, Say($"source: {error}"))
                : source is LineSource.Input
                    ? FormAnswer<MaterialsEvent>.Wrong(1, Say("source: standard input is the keyboard here"))
                    : FormAnswer<MaterialsEvent>.Of(new MaterialsEvent.SourceTyped(texts[0].Trim(), source)));

    /// <summary>What a line means.</summary>
    public static Form<LearnEvent> Meaning(string line) => new(
        Say("What does this line mean?"),
        TerminalText.Of(OneLine.Of(line)).Trim(),
        [new(Say("it means"), "", Say("such as 8420 mPa·s at 23.1 °C"))],
        texts => LineLessons.Meaning(texts[0], out var error) is null
            ? FormAnswer<LearnEvent>.Wrong(0, error!)
            : FormAnswer<LearnEvent>.Of(new LearnEvent.Meant(new(line, texts[0]))));
}
