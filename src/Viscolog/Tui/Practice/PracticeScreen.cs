using System.Collections.Immutable;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Practice;

/// <summary>The choice of a practice pot. Its context holds the practice log, never the real one.</summary>
internal static class PracticeScreen
{
    /// <summary>Help that every screen of practice ends with.</summary>
    public static ImmutableArray<string> Lesson { get; } =
    [
        "The reading builds up while the pot stands: the first value is not its body. "
        + "What was added can't be taken out; only base brings the dose back. "
        + "Nothing here touches the log. Scores are kept beside it, if a player is named.",
    ];

    public static KeyTable<PracticeEvent> Keys { get; } = new(
        "Practice",
        new("Up/Down", null, "choose a pot", new PracticeEvent.Moved(-1), new PracticeEvent.Moved(1)),
        new("Enter", "play", "play the chosen pot", new PracticeEvent.Played()),
        new("F2", "player, seed", "the player's name and the seed of the pot", new PracticeEvent.Called()),
        new("F6", "demonstration", "the demonstration", new PracticeEvent.DemoCalled()) { Brief = "demo" },
        new("F7", "scores", "the scores", new PracticeEvent.ScoresCalled()),
        new("F1", "help", "") { Role = KeyRole.Helps },
        new("Esc", "back", "back") { Brief = "", Role = KeyRole.Leaves },
        new("^Q", "", "quit") { Role = KeyRole.Quits })
    {
        WideFrom = 80,
        Above = ["A pot with a hidden curve: dose, stir, wait, read. The curve is shown at the end."],
        Below = Lesson,
    };

    public static ScreenView<PracticeState, PracticeEvent> On(TuiContext context)
        => new(context, new(_ => Keys, PracticeSteps.Next, PracticePage.Of), new PracticeState());
}
