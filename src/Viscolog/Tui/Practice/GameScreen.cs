using Viscolog.Core.Practice;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Practice;

/// <summary>A practice pot being played.</summary>
internal static class GameScreen
{
    private static readonly ScreenPlan<GameState, GameEvent> Plan = new(Keys, GameSteps.Next, GamePage.Of)
    {
        Ticked = new GameEvent.Ticked(),
        Leaving = state => state.Path is null && !state.Session.Moves.IsEmpty ? new GameEvent.Leaving() : null,
        Fields = new(1, GamePage.Fields) { Entered = state => state.Entered },
    };

    public static KeyTable<GameEvent> Playing { get; } = new(
        "Practice pot",
        new("Enter", null, "pour the grams typed; on the empty field, write the reading down") { Typed = Enter },
        new("F1", "help", "") { Role = KeyRole.Helps },
        new("F2", "let down", "let down with base", new GameEvent.LetDownCalled()),
        new("F3", "stir", "stirring begins, stirring ends", new GameEvent.Stir()),
        new("F4", "time x1/x10", "time at x1 or x10", new GameEvent.Hurry()) { Brief = "x10" },
        new("F8", "done: show the curve", "done: show what was hidden", new GameEvent.End()) { Brief = "done" },
        new("Esc", "leave", "back; an unfinished game is lost") { Role = KeyRole.Leaves },
        new("^Q", "", "quit") { Role = KeyRole.Quits })
    {
        WideFrom = 80,
        Gap = " ",
        Above = PracticeScreen.Keys.Above,
        Below = PracticeScreen.Lesson,
    };

    public static KeyTable<GameEvent> Ended { get; } = new(
        "Practice pot, the end",
        new("F6", "next: curve, why, steps", "next view: the curve, why, the steps", new GameEvent.Turned()) { Brief = "curve/why/steps" },
        new("Up/Down", null, "move the text", new GameEvent.Moved(-1), new GameEvent.Moved(1)),
        new("PgUp/PgDn", null, "ten up or down", new GameEvent.Moved(-10), new GameEvent.Moved(10)),
        new("Home/End", null, "the beginning, the end", new GameEvent.Moved(-Scrolling.ToEnd), new GameEvent.Moved(Scrolling.ToEnd)),
        new("F5", "same pot again", "the same pot again", new GameEvent.Again()) { Brief = "again" },
        new("F7", "export", "export the picture or a handout", new GameEvent.Exported()),
        new("F1", "help", "") { Role = KeyRole.Helps },
        new("Esc", "back", "back") { Brief = "", Role = KeyRole.Leaves },
        new("^Q", "", "quit") { Role = KeyRole.Quits })
    {
        WideFrom = 80,
        Below = PracticeScreen.Lesson,
    };

    public static KeyTable<GameEvent> Keys(GameState state) => state.Path is null ? Playing : Ended;

    public static ScreenView<GameState, GameEvent> On(TuiContext context, PracticeGame game, string player)
        => new(context, Plan, GameSteps.Open(game, player, context.Now));

    private static GameEvent.Typed? Enter(FieldTexts fields) => fields.Focused < 0 ? null : new(fields.Texts[0]);
}
