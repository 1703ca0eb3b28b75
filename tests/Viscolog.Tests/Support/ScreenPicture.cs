using System.Globalization;
using System.Net;
using System.Text;
using Terminal.Gui.Drawing;
using Viscolog.Text;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tests.Support;

/// <summary>
/// A page of a screen as an SVG: its text, its tones in the colours of the light theme or, where the reader's is dark, of the dark one.
/// </summary>
internal static class ScreenPicture
{
    private const double CellWidth = 7.2;
    private const double CellHeight = 15;
    private const double Margin = 10;

    /// <summary>From the upper edge of a cell to its base line.</summary>
    private const double Base = 11.5;

    public static string Of(Page page, string title)
    {
        var (width, height) = ((page.Width * CellWidth) + (2 * Margin), (page.Height * CellHeight) + (2 * Margin));
        var svg = new StringBuilder();
        svg.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width:0} {height:0}\" width=\"{width:0}\" ");
        svg.Append(
            CultureInfo.InvariantCulture,
            $"height=\"{height:0}\"><title>{title}, {page.Width} x {page.Height} characters</title>\n<style>");
        svg.Append("text{white-space:pre;font:12px 'DejaVu Sans Mono',Menlo,Consolas,monospace}\n");
        svg.Append(Colors(Theme.Light)).Append("@media(prefers-color-scheme:dark){").Append(Colors(Theme.Dark)).Append("}</style>\n");
        svg.Append("<rect class=\"Ground\" width=\"100%\" height=\"100%\"/>\n");
        foreach (var (row, line) in page.Lines.Index())
        {
            var column = 0;
            foreach (var piece in line)
            {
                Draw(svg, piece, column, row);
                column += PlainText.Columns(piece.Text);
            }
        }

        return svg.Append("</svg>\n").ToString();
    }

    private static string Colors(Theme theme)
    {
        var shades = new Shades(hasColor: true, theme);
        var rules = Enum.GetValues<Tone>().Where(t => t != Tone.Chosen).Select(t =>
        {
            var look = shades.Of(t);
            var weight = look.Style.HasFlag(TextStyle.Bold) ? ";font-weight:bold" : "";
            return $".{t}{{fill:{Hex(look.Foreground)}{weight}}}\n";
        });
        var plain = shades.Of(Tone.Plain);
        return $".Ground,.Chosen{{fill:{Hex(plain.Background)}}}\n" + string.Concat(rules);
    }

    private static string Hex(Color color) => string.Create(CultureInfo.InvariantCulture, $"#{color.R:x2}{color.G:x2}{color.B:x2}");

    private static void Draw(StringBuilder svg, Piece piece, int column, int row)
    {
        var top = Margin + (row * CellHeight);
        if (piece.Tone == Tone.Chosen)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"Plain\" x=\"{X(column)}\" y=\"{top:0.#}\" ");
            svg.Append(
                CultureInfo.InvariantCulture, $"width=\"{PlainText.Columns(piece.Text) * CellWidth:0.#}\" height=\"{CellHeight:0}\"/>\n");
        }

        foreach (var (from, text) in Runs(piece.Text))
        {
            // The length keeps columns in line whatever the font.
            var columns = PlainText.Columns(text);
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(column + from)}\" y=\"{top + Base:0.#}\" class=\"{piece.Tone}\"");
            if (columns > 1)
            {
                svg.Append(CultureInfo.InvariantCulture, $" textLength=\"{columns * CellWidth:0.#}\"");
                svg.Append(Kind(text[0]) > 0 ? " lengthAdjust=\"spacingAndGlyphs\"" : "");
            }

            svg.Append('>').Append(WebUtility.HtmlEncode(text)).Append("</text>\n");
        }
    }

    private static string X(int column) => (Margin + (column * CellWidth)).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>Letters, drawn lines and marks, dots: many fonts hold each of them in another width.</summary>
    private static int Kind(char c) => c switch { < '\u2100' => 0, >= '\u2800' and < '\u2900' => 2, _ => 1 };

    /// <summary>Text without long gaps, letters and drawing apart, each with the columns before it.</summary>
    private static IEnumerable<(int From, string Text)> Runs(string text)
    {
        var (from, column, run) = (0, 0, "");
        foreach (var c in text.Replace(PlainText.ThinSpace, ' ') + "  ")
        {
            var isLetters = run.Length > 0 && Kind(run[0]) == 0;
            var ends = run.Length > 0 && (run.EndsWith(' ') ? c == ' ' || !isLetters || Kind(c) > 0 : c != ' ' && Kind(c) != Kind(run[0]));
            if (ends)
            {
                yield return (from, run.TrimEnd());
                run = "";
            }

            if (run.Length == 0)
            {
                from = column;
            }

            run = run.Length == 0 && c == ' ' ? "" : run + c;
            column += PlainText.Columns(c.ToString());
        }
    }
}
