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

    /// <summary>Every cell of the page is drawn below; clearing it first would make each a change that is sent to the terminal.</summary>
    protected override bool OnClearingViewport() => true;

    protected override bool OnDrawingContent(DrawContext? context)
    {
        var page = _page(Viewport.Width, Viewport.Height);
        var origin = ViewportToScreen(System.Drawing.Point.Empty);
        for (var row = 0; row < Viewport.Height; row++)
        {
            List<Piece> pieces = [.. row < page.Lines.Count ? page.Lines[row] : []];
            var used = pieces.Sum(p => PlainText.Columns(p.Text));
            pieces.Add(new(new string(' ', Math.Max(0, Viewport.Width - used))));
            if (!Stands(pieces, origin.X, origin.Y + row))
            {
                Draw(pieces, row);
            }
        }

        return true;
    }

    private void Draw(List<Piece> pieces, int row)
    {
        Move(0, row);
        foreach (var piece in pieces)
        {
            SetAttribute(_shades.Of(piece.Tone));
            AddStr(piece.Text);
        }
    }

    /// <summary>
    /// Whether the row stands on the screen already. Most rows do after most keys, and looking is ten times faster than drawing. Rows with
    /// characters that are not one column wide are drawn.
    /// </summary>
    private bool Stands(List<Piece> pieces, int left, int row)
    {
        if (App?.Driver?.Contents is not { } cells || row < 0 || row >= cells.GetLength(0))
        {
            return false;
        }

        var column = left;
        foreach (var piece in pieces)
        {
            var shade = _shades.Of(piece.Tone);
            foreach (var character in piece.Text)
            {
                if (
                    char.IsSurrogate(character)
                        || column < 0
                        || column >= cells.GetLength(1)
                        || cells[row, column] is not { Grapheme: [var shown] } cell
                        || shown != character
                        || cell.Attribute != shade)
                {
                    return false;
                }

                column++;
            }
        }

        return true;
    }
}
