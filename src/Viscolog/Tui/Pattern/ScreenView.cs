using System.Collections.Immutable;
using System.Text;
using Terminal.Gui.App;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace Viscolog.Tui.Pattern;

/// <summary>A whole screen. Esc goes back and never quits; Ctrl+Q quits.</summary>
internal abstract class ScreenView : Runnable
{
    /// <summary>Whether the program is to end, not only this screen.</summary>
    public bool Quits { get; protected set; }
}

/// <summary>
/// Runs a screen as its plan says: turns keys, the clock and answers into events, performs what the steps ask for,
/// and draws the page with the fields over it.
/// </summary>
internal sealed class ScreenView<TState, TEvent> : ScreenView, IStage<TEvent>
    where TState : class
    where TEvent : class
{
    private static readonly TimeSpan Tick = TimeSpan.FromMilliseconds(200);

    private const int MostPasted = 10_000;

    /// <summary>Clocks are brought up to time by less than this.</summary>
    private static readonly TimeSpan LeastJump = TimeSpan.FromSeconds(5);

    private readonly ScreenPlan<TState, TEvent> _plan;
    private readonly PageView _page;
    private readonly TextField[] _fields;

    /// <summary>Whether the last key asked to leave and was answered with a question.</summary>
    private bool _isLeaving;

    /// <summary>The last tick, by the computer's clock and by time as it passes.</summary>
    private (DateTimeOffset Clock, long Passed)? _ticked;

    private IApplication? _pasteFrom;

    /// <summary>What was last put into the first field by itself.</summary>
    private string _filled = "";

    /// <summary>What was last drawn of the time.</summary>
    private string _shown = "";

    /// <summary>The number of the question asked last.</summary>
    private int _asked;

    public ScreenView(TuiContext context, ScreenPlan<TState, TEvent> plan, Step<TState, TEvent> first)
    {
        (Context, _plan, State) = (context, plan, first.State);
        Width = Dim.Fill();
        Height = Dim.Fill();
        SetScheme(context.Shades.Scheme);
        _page = new((width, height) => plan.Page(State, Canvas(width, height)), context.Shades, Point);
        Add(_page);
        _fields = [.. Enumerable.Range(0, plan.Fields?.Count ?? 0).Select(_ => new TextField { Y = Pos.AnchorEnd(2) })];
        foreach (var field in _fields)
        {
            field.KeyDown += (_, key) => key.Handled = Take(key);
            if (plan.Fields!.Changed is { } changed)
            {
                field.TextChanged += (_, _) => Send(changed(field.Text));
            }

            Add(field);
        }

        Initialized += (_, _) => Begin(first);
        SubViewsLaidOut += (_, _) => Place();
    }

    public TuiContext Context { get; }

    public TState State { get; private set; }

    public void Send(TEvent @event) => Perform(_plan.Next(State, @event, Context.Now));

    public T? Ask<T>(Form<T> form)
        where T : class
    {
        using var dialog = new FormDialog<T>(form, Context);
        App!.Run(dialog);
        Redraw();
        return dialog.Result;
    }

    public void Show(ScreenView screen)
    {
        var focused = _fields.FirstOrDefault(f => f.HasFocus);
        App!.Run(screen);
        if (screen.Quits)
        {
            Quit();
        }

        screen.Dispose();
        focused?.SetFocus();
        Redraw();
    }

    public void Work(string what, Func<TEvent> work, Func<string, TEvent> failed)
    {
        var (app, number) = (App, ++_asked);
        _ = Task.Run(() =>
        {
            TEvent answer;
            try
            {
                answer = work();
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                var fault = $"{e.GetType().Name}: {e.Message}";
                answer = failed(
                    Say($"no {what}, an internal error: {fault} - everything saved so far is in the log; please report it"));
            }

            app?.Invoke(() => Answer(number, answer));
            Context.Wake();
        });
    }

    public void Close() => App!.RequestStop(this);

    public void Copy(string text)
        => App?.Driver?.GetOutput().Write($"\u001b]52;c;{Convert.ToBase64String(Encoding.UTF8.GetBytes(text))}\a");

    public void Ring() => App?.Driver?.GetOutput().Write("\a");

    // Unhandled, Esc would end the program.
    protected override bool OnKeyDown(Key key) => Take(key) || key == Key.Esc || base.OnKeyDown(key);

    /// <summary>Text from the clipboard comes here first: a field would take all of it, line breaks and length notwithstanding.</summary>
    private void Paste(object? sender, PasteEventArgs args)
    {
        if (App?.TopRunnableView != this)
        {
            return;
        }

        ImmutableArray<string> lines =
        [
            .. args.Text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries).Where(l => l.Trim().Length > 0).Take(MostPasted),
        ];
        if (lines.Length > 1 && _plan.Pasted is { } pasted)
        {
            Send(pasted(lines));
        }
        else if (lines.Length > 0 && Array.Find(_fields, f => f.HasFocus) is { } field)
        {
            PastedText.Into(field, lines[0]);
        }

        args.Handled = true;
    }

    /// <summary>The page covers all of it.</summary>
    protected override bool OnClearingViewport() => true;

    protected override void Dispose(bool disposing)
    {
        if (disposing && _pasteFrom is { } app)
        {
            app.Paste -= Paste;
            Context.Watched.Remove(IsDue);
            if (Context.Post is { } post)
            {
                post.Changed -= ShowShared;
            }

            if (_plan.Heard is not null)
            {
                Context.Desk?.Call(null);
            }
        }

        base.Dispose(disposing);
    }

    private Canvas Canvas(int width, int height)
        => new(width, height, Context.IsAscii, Context.Now) { Shared = Context.Post?.State.Words ?? "" };

    private void ShowShared(object? sender, EventArgs e)
    {
        _pasteFrom?.Invoke(() => _page.SetNeedsDraw());
        Context.Wake();
    }

    private void Begin(Step<TState, TEvent> first)
    {
        _pasteFrom = App;
        App!.Paste += Paste;
        _fields.FirstOrDefault()?.SetFocus();
        Perform(first);
        if (Context.Post is { } post)
        {
            post.Changed += ShowShared;
        }

        if (_plan.Heard is { } heard && Context.Desk is { } desk)
        {
            var app = App!;
            desk.Call(() =>
            {
                app.Invoke(() =>
                {
                    foreach (var told in desk.Take())
                    {
                        Send(heard(told));
                    }
                });
                Context.Wake();
            });
        }

        if (_plan.Ticked is { } ticked)
        {
            Context.Watched.Add(IsDue);
            App!.AddTimeout(Tick, () =>
            {
                LookForJump();
                Take(ticked);
                return true;
            });
        }
    }

    /// <summary>Lets time go by; the page is drawn again only where it would show something else.</summary>
    private void Take(TEvent ticked)
    {
        if (After(ticked) is var (step, shown))
        {
            _shown = shown;
            Perform(step);
        }
    }

    /// <summary>Whether time has changed anything, so that a tick would be of use.</summary>
    private bool IsDue() => After(_plan.Ticked!) is not null;

    /// <summary>What a tick makes of the state now; null where it changes nothing.</summary>
    private (Step<TState, TEvent> Step, string Shown)? After(TEvent ticked)
    {
        var now = Context.Now;
        var step = _plan.Next(State, ticked, now);
        var shown = _plan.ShownOfTime(step.State, now);
        return ReferenceEquals(step.State, State) && step.Effects.IsEmpty && shown == _shown ? null : (step, shown);
    }

    /// <summary>Sees whether the computer's clock was set, or the computer slept, since the last tick.</summary>
    private void LookForJump()
    {
        var now = (Clock: Context.Now, Passed: Context.Clock.GetTimestamp());
        var before = _ticked;
        _ticked = now;
        if (before is { } last && _plan.Jumped is { } jumped)
        {
            var by = now.Clock - last.Clock - Context.Clock.GetElapsedTime(last.Passed, now.Passed);
            if (by.Duration() > LeastJump)
            {
                Send(jumped(by));
            }
        }
    }

    /// <summary>The wheel goes up and down as the keys do; a click chooses a row, or presses the key that it meets in the footer.</summary>
    private bool Point(Mouse mouse)
    {
        if (mouse.Flags.HasFlag(MouseFlags.WheeledUp) || mouse.Flags.HasFlag(MouseFlags.WheeledDown))
        {
            return Take(mouse.Flags.HasFlag(MouseFlags.WheeledUp) ? "Up" : "Down");
        }

        if (!mouse.Flags.HasFlag(MouseFlags.LeftButtonClicked) || mouse.Position is not { } at)
        {
            return false;
        }

        if (at.Y == Viewport.Height - 1)
        {
            return _plan.Keys(State).KeyAt(Viewport.Width, Context.IsAscii, at.X) is { } name && Take(name);
        }

        if (_plan.Clicked(State, at.Y, Viewport.Height) is { } clicked)
        {
            Send(clicked);
        }

        return true;
    }

    private bool Take(Key key) => Take(KeyName.Of(key));

    private bool Take(string key)
    {
        var keys = _plan.Keys(State);
        var press = keys.Find(
            key,
            new([.. _fields.Select(f => f.Text)], Array.FindIndex(_fields, f => f is { Visible: true, HasFocus: true })));
        switch (press)
        {
            case { Role: KeyRole.Helps }:
                Show(HelpScreen.On(Context, Say(keys.Title), keys.HelpLines));
                break;
            case { Role: KeyRole.Leaves or KeyRole.Quits } when !_isLeaving && _plan.Leaving(State) is { } stay:
                Send(stay);
                _isLeaving = true;
                return true;
            case { Role: KeyRole.Leaves }:
                App!.RequestStop(this);
                break;
            case { Role: KeyRole.Quits }:
                Quit();
                break;
            case { Event: { } sent }:
                Send(sent);
                break;
        }

        _isLeaving = false;
        return press is not null;
    }

    private void Quit()
    {
        Quits = true;
        App!.RequestStop(this);
    }

    private void Answer(int number, TEvent answer)
    {
        if (number == _asked)
        {
            Send(answer);
        }
    }

    private void Perform(Step<TState, TEvent> step)
    {
        var isEntered = _plan.Fields is { } fields && fields.Entered(step.State) != fields.Entered(State);
        var isDoubted = _plan.Fields is { } doubted && doubted.Doubted(step.State) && !doubted.Doubted(State);
        var filled = _plan.Fields?.Filled(step.State) is { } next && next.Number != _plan.Fields.Filled(State).Number ? next.Text : null;
        State = step.State;
        Place();
        if (isEntered)
        {
            Array.ForEach(_fields, f => f.Text = "");
            _fields[0].SetFocus();
            _filled = "";
        }

        if (filled is not null && _fields[0].Text == _filled)
        {
            _fields[0].Text = _filled = filled;
        }

        if (isDoubted)
        {
            _fields[0].SetFocus();
            _fields[0].SelectAll();
        }

        foreach (var effect in step.Effects)
        {
            effect.Perform(this);
        }

        Redraw();
    }

    private void Place()
    {
        if (_plan.Fields is not { } fields || Viewport.IsEmpty)
        {
            return;
        }

        var places = fields.Places(State, Viewport.Width, Viewport.Height);
        for (var i = 0; i < _fields.Length; i++)
        {
            _fields[i].Visible = i < places.Length;
            if (i < places.Length)
            {
                (_fields[i].X, _fields[i].Width) = places[i];
            }
        }
    }

    private void Redraw()
    {
        _page.SetNeedsDraw();
        SetNeedsDraw();
    }
}
