using Viscolog.Text;

namespace Viscolog.Plots.Characters;

/// <summary>Pictures drawn in characters.</summary>
internal static class TerminalChart
{
    public const int LeastWidth = 40;
    public const int LeastHeight = 10;

    /// <summary>In fewer lines the first of several panels stands alone.</summary>
    private const int LeastForAll = 13;

    /// <summary>Lines that the frame of a panel takes: the head, the axis across, its numbers.</summary>
    private const int FrameLines = 3;

    /// <summary>The part of the width that is kept for the ends of traces.</summary>
    private const double EndsShare = 0.06;

    /// <summary>Draws a picture.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="width">Columns; no line is longer.</param>
    /// <param name="height">Lines of all; no more are drawn.</param>
    /// <param name="ascii">Whether only characters from 0x20 to 0x7E may be used.</param>
    /// <returns>Lines without trailing spaces; one line that asks for room where there is too little.</returns>
    public static IReadOnlyList<string> Draw(Picture picture, int width, int height, bool ascii)
        => width < LeastWidth || height < LeastHeight
            ? [PlainText.Shorten(Say($"the chart needs {LeastWidth} x {LeastHeight} characters"), Math.Max(width, 3), "...")]
            : Lines(picture, width, height, ascii);

    /// <summary>The same for a caller who sees to the room: 38 columns and 7 lines at least.</summary>
    public static IReadOnlyList<string> Lines(Picture picture, int width, int height, bool ascii)
    {
        var glyphs = ascii ? ChartGlyphs.Plain : ChartGlyphs.Rich;
        var legend = CharLegend.Lines(picture, glyphs, width, height switch { < LeastHeight => 1, < 12 => 2, < 16 => 3, _ => 4 });
        var rows = height - legend.Count;
        var head = glyphs.Show(picture.Panels[0].Up.Short);
        var chart = picture.Panels switch
        {
            [var panel] => Alone(panel, head + glyphs.Between + glyphs.Show(picture.Title ?? ""), width, rows, glyphs),
            [var above, var below, ..] when height >= LeastForAll => Stack(above, below, width, rows, glyphs),
            [var panel, ..] => Alone(panel, head, width, rows, glyphs),
            _ => throw new ArgumentException("needs at least one panel", nameof(picture)),
        };
        return [.. chart.Concat(legend).Select(l => PlainText.Shorten(l.TrimEnd(), width, glyphs.Ellipsis))];
    }

    private static IEnumerable<string> Alone(Panel panel, string head, int width, int lines, ChartGlyphs glyphs)
    {
        var drawn = Framed(panel, lines - FrameLines, glyphs);
        return [head, .. drawn.Rows(width, drawn.Margin), .. drawn.Foot(width, drawn.Margin)];
    }

    /// <summary>Two panels with one axis across, which the lower has for both.</summary>
    private static IEnumerable<string> Stack(Panel above, Panel below, int width, int lines, ChartGlyphs glyphs)
    {
        var upper = (int)Math.Round((above.Up.To - above.Up.From) * lines);
        var (first, second) = (Framed(above, upper - 1, glyphs), Framed(below, lines - upper - FrameLines, glyphs));
        var margin = Math.Max(first.Margin, second.Margin);
        return
        [
            glyphs.Show(above.Up.Short), .. first.Rows(width, margin),
            glyphs.Show(below.Up.Short), .. second.Rows(width, margin), .. second.Foot(width, margin),
        ];
    }

    private static CharPanel Framed(Panel panel, int rows, ChartGlyphs glyphs)
    {
        var share = panel.Elements.Any(e => e is Element.Ends) ? 1 - EndsShare : 1;
        return new(panel with { Across = panel.Across with { High = panel.Across.High / share } }, rows, glyphs);
    }
}
