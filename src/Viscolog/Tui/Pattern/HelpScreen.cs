using Terminal.Gui.Input;

namespace Viscolog.Tui.Pattern;

/// <summary>Help for another screen.</summary>
internal sealed class HelpScreen(TuiContext context, string title, string[] lines) : TuiScreen(context)
{
    protected override Page Draw(int width, int height) => HelpPage.Of(title, lines, width, height, Context.IsAscii);

    protected override bool TakeKey(Key key)
    {
        GoBack();
        return true;
    }
}
