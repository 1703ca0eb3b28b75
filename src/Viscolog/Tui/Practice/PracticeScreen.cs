using Terminal.Gui.Input;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Practice;

/// <summary>The choice of a practice pot. Its context holds the practice log, never the real one.</summary>
internal sealed class PracticeScreen(TuiContext context) : TuiScreen(context)
{
    private PracticeState _state = new();

    protected override Page Draw(int width, int height) => PracticePage.Of(_state, width, height, Context.IsAscii);

    protected override bool TakeKey(Key key)
    {
        if (key == Key.CursorUp || key == Key.CursorDown)
        {
            _state = _state.Move(key == Key.CursorUp ? -1 : 1);
        }
        else if (key == Key.F1)
        {
            RunsOver(new HelpScreen(Context, "Practice", HelpPage.Practice));
        }
        else if (key == Key.Enter)
        {
            RunsOver(new GameScreen(Context, _state.Game, _state.Player));
        }
        else if (key == Key.F2)
        {
            _state = Ask(PracticeForms.Player(_state)) ?? _state;
        }
        else if (key == Key.F6)
        {
            RunsOver(new DemoScreen(Context, _state.Game));
        }
        else if (key == Key.F7)
        {
            RunsOver(new ScoresScreen(Context));
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
}
