using Terminal.Gui.Input;
using Viscolog.Tests.Store;
using Viscolog.Tui.Pattern;
using TrialStep = Viscolog.Tui.Pattern.Step<string, string>;

namespace Viscolog.Tests.Tui;

/// <summary>What the one view does for every screen, on a screen of its own whose state and events are words.</summary>
public sealed class ScreenViewTests
{
    private static readonly KeyTable<string> Keys = new(
        "Trial",
        new("F2/F3", "ask", "ask a question", "ask 1", "ask 2"),
        new("F4", null, "fail", "fail"),
        new("Enter", null, "take what is typed") { Typed = Enter },
        new("+", null, "a plus where nothing is typed") { Typed = fields => fields is { Focused: 0, Texts: ["", ..] } ? "plus" : null },
        new("Esc", "back", "back") { Role = KeyRole.Leaves },
        new("^Q", "quit", "quit") { Role = KeyRole.Quits });

    private static string? Enter(FieldTexts fields) => fields.Focused < 0 ? null : "typed " + string.Join('|', fields.Texts);

    private static int Entered(string state) => state.StartsWith("typed", StringComparison.Ordinal) ? state.Length : 0;

    [Fact]
    public void Of_several_questions_only_the_last_is_answered()
    {
        using var first = new ManualResetEventSlim();
        using var trial = new Trial(first);
        trial.Stage.Press(Key.F2, Key.F3);
        trial.Stage.WaitFor(() => trial.Screen.State == "answer 2");
        first.Set();
        trial.WaitForAll(2);
        Assert.Equal("answer 2", trial.Screen.State);
    }

    [Fact]
    public void A_fault_beside_the_screen_is_told_and_the_screen_goes_on()
    {
        using var trial = new Trial(null);
        trial.Stage.Press(Key.F4);
        trial.Stage.WaitFor(() => trial.Screen.State.StartsWith(
            "no answer, an internal error: InvalidOperationException: ",
            StringComparison.Ordinal));
        trial.Stage.Press(Key.F3);
        trial.Stage.WaitFor(() => trial.Screen.State == "answer 2");
    }

    [Fact]
    public void Keys_of_the_table_go_before_the_fields_and_the_fields_are_emptied_when_the_state_says_so()
    {
        using var trial = new Trial(null);
        trial.Stage.Type("+");
        Assert.Equal("plus", trial.Screen.State);
        trial.Stage.Type("1+");
        trial.Stage.Press(Key.Tab);
        trial.Stage.Type("b");
        trial.Stage.Press(Key.Enter);
        Assert.Equal("typed 1+|b", trial.Screen.State);
        trial.Stage.Type("7");
        trial.Stage.Press(Key.Enter);
        Assert.Equal("typed 7|", trial.Screen.State);
    }

    [Fact]
    public void Fields_that_are_not_shown_take_no_key()
    {
        using var trial = new Trial(null, width: 20);
        trial.Stage.Type("5");
        trial.Stage.Press(Key.Enter);
        Assert.Equal("begun", trial.Screen.State);
    }

    /// <summary>The screen on a driver without a terminal.</summary>
    private sealed class Trial : IDisposable
    {
        private readonly Bench _bench = new();
        private readonly Viscolog.Store.BenchLog _log;
        private int _worked;

        public Trial(ManualResetEventSlim? first, int width = 80)
        {
            _log = _bench.Open();
            Stage = new(width, 24);
            var plan = new ScreenPlan<string, string>(_ => Keys, (state, sent, _) => Next(state, sent, first), (_, canvas) => new(canvas))
            {
                Fields = new(2, (_, columns, _) => columns < 40 ? [] : [(0, 10), (20, 10)]) { Entered = Entered },
            };
            Screen = new(new(_log, TimeProvider.System, new(hasColor: false), IsAscii: true), plan, "begun");
            Stage.Show(Screen);
        }

        public ScreenTests.Stage Stage { get; }

        public ScreenView<string, string> Screen { get; }

        /// <summary>Waits until so many questions were worked on, and what they answered has arrived.</summary>
        public void WaitForAll(int questions)
        {
            Stage.WaitFor(() => _worked == questions);
            Stage.Press(Key.F3);
            Stage.WaitFor(() => _worked > questions);
        }

        public void Dispose()
        {
            Stage.End();
            Screen.Dispose();
            Stage.Dispose();
            _log.Dispose();
            _bench.Dispose();
        }

        private TrialStep Next(string state, string sent, ManualResetEventSlim? first) => sent switch
        {
            "fail" => new TrialStep(state, new Question(() => throw new InvalidOperationException("none"))),
            "ask 1" => new TrialStep(state, new Question(() => Worked("answer 1", first))),
            "ask 2" => new TrialStep(state, new Question(() => Worked("answer 2", null))),
            _ => sent,
        };

        private string Worked(string answer, ManualResetEventSlim? gate)
        {
            gate?.Wait(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
            Interlocked.Increment(ref _worked);
            return answer;
        }
    }

    private sealed record Question(Func<string> Work) : IEffect<string>
    {
        public void Perform(IStage<string> stage) => stage.Work("answer", Work, fault => fault);
    }
}
