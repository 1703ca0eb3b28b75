using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Runs;

/// <summary>The list of runs: open one, begin one, compare, export.</summary>
internal static class RunsScreen
{
    private static readonly KeyTable<RunsEvent> OfLog = new(
        "Runs",
        new("Up/Down", null, "choose a run", new RunsEvent.Moved(-1), new RunsEvent.Moved(1)),
        new("PgUp/PgDn", null, "ten runs up or down", new RunsEvent.Moved(-10), new RunsEvent.Moved(10)),
        new("Home/End", null, "the first, the last", new RunsEvent.Moved(-Scrolling.ToEnd), new RunsEvent.Moved(Scrolling.ToEnd)),
        new("Enter", "open", "open the chosen run", new RunsEvent.Opened()) { Brief = null },
        new("F1", "help", "") { Role = KeyRole.Helps },
        new("F2", "new", "begin a new run", new RunsEvent.Begun()),
        new("F3", null, "a practice log, if this one has no run yet", new RunsEvent.PracticeLogCalled()),
        new("F4", "mark", "mark or unmark", new RunsEvent.Marked()),
        new("F5", "compare", "compare the marked runs on one chart", new RunsEvent.Compared()),
        new("F6", "check", "check the chosen run", new RunsEvent.Checked()),
        new("F7", "export", "export the marked runs, or the chosen one, as run files", new RunsEvent.Exported()),
        new("F8", "materials", "materials", new RunsEvent.MaterialsCalled()),
        new("F9", "trend", "trend of its product's batches", new RunsEvent.TrendCalled()),
        new("F10", "practice", "practice pots, apart from this log", new RunsEvent.PotsCalled()) { Brief = null },
        new("F11", null, "put the run away, or bring it back; nothing is lost", new RunsEvent.PutAway()),
        new("F12", null, "compare the thickeners of the marked runs: dose, cost, water", new RunsEvent.TableCalled()),
        new("^R", null, "go through the run again, reading by reading: known, advised, done", new RunsEvent.Replayed()),
        new("^C", null, "copy the list as it is shown", new RunsEvent.Copied()),
        new("^T", null, "another order", new RunsEvent.Sorted()),
        new("^P", null, "show runs that were put away as well, or hide them", new RunsEvent.ArchiveTurned()),
        new("^Q", "quit", "quit") { Brief = "", Role = KeyRole.Quits })
    {
        WideFrom = 112,
        Above = ["Type words to search for; a run must contain each of them, in any column. Up and Down choose a run."],
    };

    private static readonly KeyRow<RunsEvent> Back = new("Esc", null, "back") { Role = KeyRole.Leaves };

    private static readonly KeyTable<RunsEvent> OfPractice = OfLog with { Rows = OfLog.Rows.Add(Back) };

    private static readonly ScreenPlan<RunsState, RunsEvent> Plan = new(Keys, RunsSteps.Next, RunsPage.Of)
    {
        Clicked = RunsPage.Clicked,
        Fields = new(1, RunsPage.Fields) { Changed = text => new RunsEvent.Searched(text) },
    };

    public static KeyTable<RunsEvent> Keys(RunsState state) => state.IsPractice ? OfPractice : OfLog;

    public static ScreenView<RunsState, RunsEvent> On(TuiContext context) => new(context, Plan, RunsState.Of(context));
}
