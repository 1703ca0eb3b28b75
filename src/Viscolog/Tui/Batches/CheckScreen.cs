using Terminal.Gui.Input;
using Viscolog.Core.Checking;
using Viscolog.Store;
using Viscolog.Tui.Materials;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Batches;

/// <summary>A batch against its specification.</summary>
internal sealed class CheckScreen : TuiScreen
{
    private readonly System.Collections.Immutable.ImmutableArray<Core.Pots.Run> _earlier;
    private CheckState _state;

    public CheckScreen(TuiContext context, LoggedRun run)
        : base(context)
    {
        _earlier = context.Log.Earlier(run.File.Run, run.Number);
        _state = CheckState.Of(run, BenchKnowledge.Of(context.Log), Today);
        Initialized += (_, _) => Answer();
    }

    /// <summary>The state as it stands, for tests.</summary>
    internal CheckState State => _state;

    private DateOnly Today => DateOnly.FromDateTime(Context.Now.Date);

    protected override Page Draw(int width, int height) => CheckPage.Of(_state, width, height, Context.IsAscii);

    protected override bool TakeKey(Key key)
    {
        if (key == Key.CursorUp || key == Key.CursorDown)
        {
            Choose(key == Key.CursorUp ? -1 : 1);
        }
        else if (key == Key.PageUp || key == Key.PageDown)
        {
            _state = _state.Scroll(key == Key.PageUp ? -5 : 5);
        }
        else if (key == Key.F1)
        {
            RunsOver(new HelpScreen(Context, "Check", HelpPage.Check));
        }
        else if (key == Key.F4)
        {
            ReadOil();
        }
        else if (key == Key.F9)
        {
            RunsOver(new TrendScreen(Context, _state.Current?.Name));
        }
        else if (key == Key.Esc)
        {
            GoBack();
        }
        else
        {
            return false;
        }

        Redraw();
        return true;
    }

    private void Choose(int by)
    {
        var before = _state.Asked;
        _state = _state.Choose(by);
        if (_state.Asked != before)
        {
            Answer();
        }
    }

    private void ReadOil()
    {
        var last = Context.Log.Oils() is [.., var oil] ? oil.Row : null;
        if (Ask(OilForm.Of(_state.Run.File.Run.MethodInForce, last, Today)) is { } row && Context.Log.AddOil(row) is WriteOutcome.Saved)
        {
            _state = _state with { Outcome = null, Asked = _state.Asked + 1 };
            Answer();
        }
    }

    /// <summary>Works the check out beside the screen; the log itself is only read here.</summary>
    private void Answer()
    {
        if (_state.Current is not { } specification)
        {
            return;
        }

        var asked = _state.Asked;
        var request = BenchKnowledge.Of(Context.Log).Request(_state.Run.File.Run, specification, _earlier, Today);
        WorkOut("check", () => BatchChecks.Of(request), outcome => Show(outcome, null), fault => Show(null, fault));

        void Show(CheckOutcome? outcome, string? fault)
        {
            _state = _state.Answered(asked, outcome, fault);
            Redraw();
        }
    }
}
