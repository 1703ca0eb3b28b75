using Viscolog.Core.Practice;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Practice;

/// <summary>The demonstration: three players on one pot.</summary>
internal static class DemoScreen
{
    // Made when it is asked for: one of its words has a sense of its own.
    public static KeyTable<DemoEvent> Keys => new(
        "Demonstration",
        new("Enter", "next", "next step", new DemoEvent.Went(1)),
        new("Right/Space", null, "next step", new DemoEvent.Went(1), new DemoEvent.Went(1)),
        new("Left", "back", "the step before", new DemoEvent.Went(-1)),
        new("Backspace", null, "the step before", new DemoEvent.Went(-1)),
        new("F3", "run, stop", "run on its own, stop", new DemoEvent.Ran()) { Brief = Say("run", "demonstration") },
        new("F6", "why it fails", "why it ends this way; back to the players", new DemoEvent.Turned()) { Brief = "why" },
        new("Up/Down", null, "move the text", new DemoEvent.Scrolled(-1), new DemoEvent.Scrolled(1)),
        new("PgUp/PgDn", null, "ten up or down", new DemoEvent.Scrolled(-10), new DemoEvent.Scrolled(10)),
        new("Home/End", null, "the beginning, the end", new DemoEvent.Scrolled(-Scrolling.ToEnd), new DemoEvent.Scrolled(Scrolling.ToEnd)),
        new("F7", "export", "export picture or handout", new DemoEvent.Exported()),
        new("F1", null, "") { Role = KeyRole.Helps },
        new("Esc", "", "back") { Role = KeyRole.Leaves },
        new("^Q", "", "quit") { Role = KeyRole.Quits })
    {
        WideFrom = 80,
        Above = ["Three players on the pot with the hidden curve, side by side."],
        Below = PracticeScreen.Lesson,
    };

    public static ScreenView<DemoState, DemoEvent> On(TuiContext context, PracticeGame game)
        => new(context, new(_ => Keys, DemoSteps.Next, DemoPage.Of) { Ticked = new DemoEvent.Ticked() }, DemoSteps.Open(game));
}
