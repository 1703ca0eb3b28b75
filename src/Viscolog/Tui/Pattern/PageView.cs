using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Viscolog.Text;

namespace Viscolog.Tui.Pattern;

/// <summary>Draws a page; knows nothing of what it says.</summary>
internal sealed class PageView : View
{
    private readonly Func<int, int, Page> _page;
    private readonly Shades _shades;
    private readonly Func<Mouse, bool> _pointed;

    public PageView(Func<int, int, Page> page, Shades shades, Func<Mouse, bool> pointed)
    {
        (_page, _shades, _pointed) = (page, shades, pointed);
        Width = Dim.Fill();
        Height = Dim.Fill();
        CanFocus = false;
    }

    protected override bool OnMouseEvent(Mouse mouse) => _pointed(mouse) || base.OnMouseEvent(mouse);

    protected override bool OnDrawingContent(DrawContext? context)
    {
        var page = _page(Viewport.Width, Viewport.Height);
        for (var row = 0; row < Viewport.Height; row++)
        {
            Move(0, row);
            var used = 0;
            foreach (var piece in row < page.Lines.Count ? page.Lines[row] : [])
            {
                SetAttribute(_shades.Of(piece.Tone));
                AddStr(piece.Text);
                used += PlainText.Columns(piece.Text);
            }

            SetAttribute(_shades.Of(Tone.Plain));
            AddStr(new string(' ', Math.Max(0, Viewport.Width - used)));
        }

        return true;
    }
}
