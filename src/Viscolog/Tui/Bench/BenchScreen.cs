using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;
using Viscolog.Core.Pots;
using Viscolog.Store;
using Viscolog.Tui.Batches;
using Viscolog.Tui.Charts;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Bench;

/// <summary>The bench: draws its state, turns keys into events, and does what the state asks for.</summary>
internal sealed class BenchScreen : TuiScreen
{
    private readonly TextField _reading = new() { X = 9, Width = 10 };
    private readonly TextField _wait = new();
    private readonly TextField _note = new();
    private readonly System.Collections.Immutable.ImmutableArray<Run> _earlier;
    private BenchState _state;

    public BenchScreen(TuiContext context, LoggedRun run)
        : base(context)
    {
        _earlier = context.Log.Earlier(run.File.Run, run.Number);
        _state = new(run);
        foreach (var field in (TextField[])[_reading, _wait, _note])
        {
            field.Y = Pos.AnchorEnd(2);
            field.KeyDown += (_, key) => key.Handled = TakeFieldKey(field, key);
            Add(field);
        }

        Initialized += (_, _) => Begin(run);
        SubViewsLaidOut += (_, _) => Place();
    }

    /// <summary>The state as it stands, for tests.</summary>
    internal BenchState State => _state;

    protected override Page Draw(int width, int height)
    {
        var small = width < Page.LeastWidth || height < Page.LeastHeight;
        _reading.Visible = _wait.Visible = _note.Visible = !small;
        return BenchPage.Of(_state, Context.Now, width, height, Context.IsAscii);
    }

    protected override bool TakeKey(Key key)
    {
        if (key == Key.F1)
        {
            RunsOver(new HelpScreen(Context, "Bench", HelpPage.Bench));
        }
        else if (key == Key.F2)
        {
            Take(BenchForms.Dose(_state));
        }
        else if (key == Key.F3)
        {
            Dispatch(new BenchEvent.Stir());
        }
        else if (key == Key.F4)
        {
            Take(BenchForms.Beside(_state));
        }
        else if (key == Key.F5 && _state.Run.Rows.Length > 0)
        {
            Take(BenchForms.Void(_state));
        }
        else if (key == Key.F6 && _state.Advice?.Picture is { } picture)
        {
            RunsOver(new ChartScreen(Context, [picture]));
        }
        else if (key == Key.F7)
        {
            Take(BenchForms.Change(_state));
        }
        else if (key == Key.F8)
        {
            Take(BenchForms.Aim(_state));
        }
        else if (key == Key.F10)
        {
            RunsOver(new CheckScreen(Context, _state.Run));
        }
        else if (key == Key.F9)
        {
            GoBack();
        }
        else if (key == Key.CursorUp || key == Key.CursorDown)
        {
            Dispatch(new BenchEvent.Moved(key == Key.CursorUp ? -1 : 1));
        }
        else
        {
            return false;
        }

        return true;
    }

    private bool TakeFieldKey(TextField field, Key key)
    {
        if (key == Key.Enter)
        {
            Dispatch(new BenchEvent.Typed(_reading.Text, _wait.Text, _note.Text));
            return true;
        }

        // A plus where a reading would begin is no number.
        if (key == new Key('+') && field == _reading && _reading.Text.Length == 0)
        {
            Dispatch(new BenchEvent.TookAdvised());
            return true;
        }

        return (key == Key.CursorUp || key == Key.CursorDown) && TakeKey(key);
    }

    private void Begin(LoggedRun run)
    {
        Perform(BenchSteps.Open(run));
        _reading.SetFocus();
        App!.AddTimeout(TimeSpan.FromMilliseconds(250), () =>
        {
            Dispatch(new BenchEvent.Ticked());
            return true;
        });
    }

    private void Place()
    {
        var fields = BenchPage.Fields(_state, Viewport.Width);
        foreach (var (field, (x, width)) in ((TextField[])[_reading, _wait, _note]).Zip(fields))
        {
            (field.X, field.Width) = (x, width);
        }
    }

    private void Take(Form<BenchEvent> form)
    {
        if (Ask(form) is { } @event)
        {
            Dispatch(@event);
        }
    }

    private void Dispatch(BenchEvent @event) => Perform(BenchSteps.Next(_state, @event, Context.Now));

    private void Perform(BenchStep step)
    {
        if (step.State.Entered != _state.Entered)
        {
            _reading.Text = _wait.Text = _note.Text = "";
            _reading.SetFocus();
        }

        _state = step.State;
        foreach (var effect in step.Effects)
        {
            Perform(effect);
        }

        Redraw();
    }

    private void Perform(BenchEffect effect)
    {
        switch (effect)
        {
            case BenchEffect.AddRow add:
                Report(Context.Log.Add(_state.Run.Number, add.Row), add.Said);
                break;
            case BenchEffect.VoidRow { By: { } by } replaced:
                Report(Context.Log.Replace(_state.Run.Number, replaced.Row, replaced.Reason, by), replaced.Said);
                break;
            case BenchEffect.VoidRow voided:
                Report(Context.Log.Void(_state.Run.Number, voided.Row, voided.Reason), voided.Said);
                break;
            case BenchEffect.Restate restate:
                Report(Context.Log.Restate(_state.Run.Number, restate.Header), restate.Said);
                break;
            case BenchEffect.Ask ask:
                Answer(ask);
                break;
            case BenchEffect.Ring:
                App?.Driver?.GetOutput().Write("\a");
                break;
        }
    }

    private void Report(WriteOutcome outcome, string said) => Dispatch(outcome switch
    {
        WriteOutcome.Saved => new BenchEvent.Logged(Context.Log.Run(_state.Run.Number)!, said),
        WriteOutcome.SavedOnly only => new BenchEvent.NotLogged(only.Reason),
        WriteOutcome.NotSaved not => new BenchEvent.NotLogged($"not saved: {not.Reason}"),
        _ => throw new InvalidOperationException("not a case of the closed set"),
    });

    /// <summary>Works advice out beside the screen; the answer comes back as an event.</summary>
    private void Answer(BenchEffect.Ask ask)
    {
        WorkOut("advice", () => BenchAdvisor.Of(ask, _earlier), Advise, fault => Advise(new(null, fault, null)));

        void Advise(BenchAdvice advice) => Dispatch(new BenchEvent.Advised(ask.Asked, advice));
    }
}
