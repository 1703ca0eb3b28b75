using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace Viscolog.Tui.Pattern;

/// <summary>A whole screen: a page, and fields over it. Esc goes back and never quits; Ctrl+Q quits.</summary>
internal abstract class TuiScreen : Runnable
{
    private readonly PageView _page;

    protected TuiScreen(TuiContext context)
    {
        Context = context;
        Width = Dim.Fill();
        Height = Dim.Fill();
        SetScheme(context.Shades.Scheme);
        _page = new((width, height) => Draw(width, height), context.Shades);
        Add(_page);
    }

    /// <summary>Whether the program is to end, not only this screen.</summary>
    public bool Quits { get; private set; }

    protected TuiContext Context { get; }

    protected abstract Page Draw(int width, int height);

    /// <summary>Takes a key before any field does; false leaves it to them.</summary>
    protected abstract bool TakeKey(Key key);

    protected override bool OnKeyDown(Key key)
    {
        if (key == Key.Q.WithCtrl)
        {
            Quits = true;
            App!.RequestStop(this);
            return true;
        }

        // Unhandled, Esc would end the program.
        return TakeKey(key) || key == Key.Esc || base.OnKeyDown(key);
    }

    /// <summary>Runs another screen on top; says whether it asked to quit, which this one then does too.</summary>
    protected bool RunsOver(TuiScreen screen)
    {
        App!.Run(screen);
        if (screen.Quits)
        {
            Quits = true;
            App!.RequestStop(this);
        }

        screen.Dispose();
        Redraw();
        return Quits;
    }

    /// <summary>Asks a form; null where it was left.</summary>
    protected T? Ask<T>(Form<T> form)
        where T : class
    {
        using var dialog = new FormDialog<T>(form, Context);
        App!.Run(dialog);
        Redraw();
        return dialog.Result;
    }

    /// <summary>Works something out beside the screen; the answer comes back on the screen's own thread. A fault of ours there is said, and the screen goes on.</summary>
    /// <param name="what">What there is none of where that fails.</param>
    /// <param name="work">Touches nothing of the screen.</param>
    /// <param name="answer">Takes the answer.</param>
    /// <param name="failed">Takes what is said of a fault.</param>
    protected void WorkOut<T>(string what, Func<T> work, Action<T> answer, Action<string> failed)
    {
        var app = App;
        _ = Task.Run(() =>
        {
            Action next;
            try
            {
                var result = work();
                next = () => answer(result);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                var said = $"no {what}, a fault of ours: {e.GetType().Name}: {e.Message} - everything that was saved is in the log; please report it";
                next = () => failed(said);
            }

            app?.Invoke(next);
        });
    }

    protected void GoBack() => App!.RequestStop(this);

    protected void Redraw()
    {
        _page.SetNeedsDraw();
        SetNeedsDraw();
    }
}
