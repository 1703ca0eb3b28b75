using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The frame of a chart in characters: a head, the labelled axes, and what is painted between them.</summary>
internal static class CharPanel
{
    /// <summary>A mark every so many columns.</summary>
    private const int ColumnsPerMark = 8;

    /// <summary>Lines that the frame takes: the head, the axis across, its numbers.</summary>
    public const int FrameLines = 3;

    /// <summary>Draws a chart.</summary>
    /// <param name="head">The line above, as the glyphs can show it.</param>
    /// <param name="across">The axis across.</param>
    /// <param name="up">The axis up.</param>
    /// <param name="width">Columns; no line is longer.</param>
    /// <param name="height">Lines; more than <see cref="FrameLines"/>.</param>
    /// <param name="glyphs">The characters.</param>
    /// <param name="paint">Paints the inside.</param>
    /// <param name="leastMargin">Columns up to the axis at least, so that panels below one another begin alike.</param>
    public static IEnumerable<string> Draw(string head, CharAxis across, CharAxis up, int width, int height, ChartGlyphs glyphs, Action<CharPlane> paint, int leastMargin = 0)
    {
        var labels = Labels(up, height - FrameLines, glyphs);
        var margin = Math.Max(leastMargin, labels.Select(l => l?.Length ?? 0).Max() + 1);
        var plane = new CharPlane(new CharGrid(width - margin, labels.Length, glyphs.IsPlain), across, up);
        paint(plane);
        var rows = labels.Select((label, i) => (label ?? "").PadLeft(margin - 1) + (label is null ? glyphs.Upright : glyphs.Tick) + plane.Grid.Row(i));
        string[] lines = [head, .. rows, .. Foot(across, margin, width, glyphs)];
        return lines.Select(l => PlainText.Shorten(l.TrimEnd(), width, glyphs.Ellipsis));
    }

    /// <summary>The label of each row; null where it has none.</summary>
    private static string?[] Labels(CharAxis up, int rows, ChartGlyphs glyphs)
    {
        var labels = new string?[rows];
        foreach (var value in up.Marks(Math.Max(2, rows / 3)))
        {
            var row = rows - 1 - up.Place(value, rows);
            labels[row] ??= CharAxis.Label(value, glyphs);
        }

        return labels;
    }

    /// <summary>The axis across and its labels.</summary>
    private static string[] Foot(CharAxis across, int margin, int width, ChartGlyphs glyphs)
    {
        var columns = width - margin;
        var axis = new CharGrid(columns, 1, plain: true);
        var numbers = new CharGrid(width, 1, plain: true);
        axis.Write(0, 0, new string(glyphs.Across, columns));
        var free = 0;
        foreach (var value in across.Marks(columns / ColumnsPerMark).Order())
        {
            var column = across.Place(value, columns);
            var text = CharAxis.Label(value, glyphs);
            var from = Math.Max(0, margin + column - (text.Length / 2));
            axis.Put(column, 0, glyphs.AcrossTick);
            if (from >= free && from + text.Length < width - across.Title.Length)
            {
                numbers.Write(from, 0, text);
                free = from + text.Length + 1;
            }
        }

        numbers.Write(width - across.Title.Length, 0, across.Title);
        return [new string(' ', margin - 1) + glyphs.Corner + axis.Row(0), numbers.Row(0)];
    }
}
