using Terminal.Gui.Input;
using Viscolog.Core.Practice;
using Viscolog.Reports;
using Viscolog.Tui.Pattern;
using Viscolog.Wording;

namespace Viscolog.Tui.Practice;

/// <summary>The demonstration: three players on one pot.</summary>
internal sealed class DemoScreen : TuiScreen
{
    private DemoState _state;

    public DemoScreen(TuiContext context, PracticeGame game)
        : base(context)
    {
        _state = new(game);
        Initialized += (_, _) => Begin();
    }

    /// <summary>The state as it stands, for tests.</summary>
    internal DemoState State => _state;

    protected override Page Draw(int width, int height) => DemoPage.Of(_state, width, height, Context.IsAscii);

    protected override bool TakeKey(Key key)
    {
        if (key == Key.F1)
        {
            RunsOver(new HelpScreen(Context, "Practice", HelpPage.Practice));
        }
        else if (key == Key.Enter || key == Key.CursorRight || key == Key.Space)
        {
            _state = _state.Go(1) with { Due = null };
        }
        else if (key == Key.CursorLeft || key == Key.Backspace)
        {
            _state = _state.Go(-1) with { Due = null };
        }
        else if (key == Key.F3)
        {
            _state = _state.Run(Context.Now);
        }
        else if (key == Key.F6)
        {
            _state = _state with { ShowsLesson = !_state.ShowsLesson, Due = null, Above = 0 };
        }
        else if (key == Key.CursorUp || key == Key.CursorDown)
        {
            _state = _state with { Above = Math.Max(0, _state.Above + (key == Key.CursorUp ? -1 : 1)) };
        }
        else if (key == Key.F7 && _state.Played is { } played)
        {
            if (Ask(ExportForm.Practice()) is { } path)
            {
                _state = _state with { Said = PracticeForms.Written(PracticeFile.Write(PracticeWords.Named(played), path, force: false, DateOnly.FromDateTime(Context.Now.DateTime))) };
            }
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

    private void Begin()
    {
        var game = _state.Game;
        WorkOut("demonstration", () => Demonstration.Of(game), played => Show(_state with { Played = played }), fault => Show(_state with { Said = fault }));
        App!.AddTimeout(TimeSpan.FromMilliseconds(250), () =>
        {
            var next = _state.Tick(Context.Now);
            if (next != _state)
            {
                Show(next);
            }

            return true;
        });
    }

    private void Show(DemoState state)
    {
        _state = state;
        Redraw();
    }
}
