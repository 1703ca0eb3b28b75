using Viscolog.Store.Copy;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Bench;

/// <summary>The bench: a run being dosed and read.</summary>
internal static class BenchScreen
{
    public static KeyTable<BenchEvent> Keys { get; } = new(
        "Bench",
        new("Enter", null, "save the reading (or the note alone)") { Typed = Enter },
        new("Esc", null, "", new BenchEvent.Corrected()),
        new("Tab", null, "next field"),
        new("F1", "help", "") { Role = KeyRole.Helps },
        new("F2", "dose", "log other grams", new BenchEvent.Called(BenchForms.Dose)),
        new("+", "advised dose", "log the advised grams (field empty)") { Brief = "advised", Typed = Plus },
        new("F3", "stir", "stirring begins, stirring ends", new BenchEvent.Stir()),
        new("F4", "pH/temp/string", "pH, temperature, string, fault", new BenchEvent.Called(BenchForms.Beside)) { Brief = "pH/temp" },
        new("F5", "void", "void or correct the chosen entry", new BenchEvent.Called(BenchForms.Void)),
        new("^Z/^Y", null, "undo, redo", new BenchEvent.TakenBack(), new BenchEvent.SaidAgain()),
        new("^C", null, "copy advice or entry", new BenchEvent.Copied()),
        new("PgUp/PgDn", null, "ten entries up or down", new BenchEvent.Moved(-10), new BenchEvent.Moved(10)),
        new("*", null, "stir, as F3 (field empty)") { Typed = fields => IsBegun(fields) ? null : new BenchEvent.Stir() },
        new("/", null, "dose, as F2 (field empty)") { Typed = fields => IsBegun(fields) ? null : new BenchEvent.Called(BenchForms.Dose) },
        new("?", null, "the whole advice") { Typed = Ask },
        new("Up/Down", null, "choose an entry", new BenchEvent.Moved(-1), new BenchEvent.Moved(1)),
        new("F6", "plot", "the chart alone, and export", new BenchEvent.Charted()),
        new("F7", "in/out", "base, water in; sample out", new BenchEvent.Called(BenchForms.Change)) { Brief = null },
        new("F8", "target", "target, tolerance, risk", new BenchEvent.Called(BenchForms.Aim)) { Brief = "aim" },
        new("F12", null, "report, batch sheet, label", new BenchEvent.PaperCalled()),
        new("F11", null, "correct the run's header", new BenchEvent.Correcting()),
        new("F9", "runs", "the list of runs") { Role = KeyRole.Leaves },
        new("F10", "check", "check it against its specification", new BenchEvent.Checked()) { Brief = null },
        new("^Q", "", "quit") { Role = KeyRole.Quits })
    {
        WideFrom = 100,
        Above =
        [
            "Type the reading and press Enter: it is saved, and the advice is worked out again. "
            + "The wait comes from the clock; type another in its field if the clock is wrong.",
        ],
        Below =
        [
            "Units: 1.45 Pa.s, 1450 cP, 2 mL, 73.4 F. Torque with its speed: 35.2@20. "
            + "What was saved is on the disk before the screen says so. Nothing is ever deleted: what is undone stays in sight, void. "
            + "An addition can't be taken out again: read when the pot has settled, then dose.",
            "Alkali and amines burn skin and eyes: goggles and gloves. Raise no dust. Thickeners "
            + "and binders contain preservatives. The safety data sheet and local rules decide.",
        ],
    };

    private static readonly ScreenPlan<BenchState, BenchEvent> Plan = new(_ => Keys, BenchSteps.Next, BenchPage.Of)
    {
        Ticked = new BenchEvent.Ticked(),
        ShownOfTime = (state, now) => state.Clock.Words(now),
        Heard = told => new BenchEvent.Heard(told),
        Pasted = lines => new BenchEvent.Pasted(lines),
        Jumped = by => new BenchEvent.ClockJumped(by),
        Leaving = state => state.Clock.IsStirring ? new BenchEvent.Leaving() : null,
        Fields = new(3, BenchPage.Fields)
        {
            Entered = state => state.Entered,
            Filled = state => (state.Feeds.Filled, state.Feeds.Text),
            Doubted = state => state.Doubted is not null,
        },
    };

    public static ScreenView<BenchState, BenchEvent> On(TuiContext context, LoggedRun run)
        => new(context, Plan, BenchSteps.Open(run, context.Log.Earlier(run.File.Run, run.Number), context.TakesReadings));

    private static BenchEvent.Typed? Enter(FieldTexts fields)
        => fields.Focused < 0 ? null : new(fields.Texts[0], fields.Texts[1], fields.Texts[2]);

    private static BenchEvent.Explained? Ask(FieldTexts fields) => IsBegun(fields) ? null : new();

    /// <summary>Whether a letter belongs to a field: something stands in the reading, or another field is typed into.</summary>
    private static bool IsBegun(FieldTexts fields) => fields is not { Focused: 0, Texts: ["", ..] };

    /// <summary>A plus where a reading would begin is no number.</summary>
    private static BenchEvent.TookAdvised? Plus(FieldTexts fields) => IsBegun(fields) ? null : new();
}
