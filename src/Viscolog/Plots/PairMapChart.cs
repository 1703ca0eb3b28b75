using Viscolog.Core.Advising;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The map of two doses in characters: each cell says which medians are in band, with lines where the body passes round values.</summary>
internal static class PairMapChart
{
    private const char Both = '#';
    private const char Body = '=';
    private const char String = '|';
    private const char Line = '.';

    /// <summary>Draws it.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="width">Columns; no line is longer.</param>
    /// <param name="height">Lines.</param>
    /// <param name="ascii">Whether only characters from 0x20 to 0x7E may be used.</param>
    public static IReadOnlyList<string> Draw(PairPicture picture, int width, int height, bool ascii)
    {
        var glyphs = ascii ? ChartGlyphs.Plain : ChartGlyphs.Rich;
        if (width < TerminalChart.LeastWidth || height < TerminalChart.LeastHeight)
        {
            return [$"the map needs {TerminalChart.LeastWidth} x {TerminalChart.LeastHeight} characters"];
        }

        var across = new CharAxis(glyphs.Show($"dose of {PlainText.Shorten(picture.BodyThickener, 16)}, %"), 0, picture.Map.BodyDoses[^1].Percent, IsLogarithmic: false);
        var up = new CharAxis("", 0, picture.Map.StringDoses[^1].Percent, IsLogarithmic: false);
        var head = glyphs.Show($"dose of {PlainText.Shorten(picture.StringThickener, 16)}, %") + glyphs.Between + glyphs.Show(picture.Name ?? "run without a name");
        var legend = Legend(picture, glyphs, width).ToArray();
        return [.. CharPanel.Draw(head, across, up, width, height - legend.Length, glyphs, plane => Paint(picture, plane, glyphs)), .. legend.Select(l => PlainText.Shorten(l, width, glyphs.Ellipsis))];
    }

    private static IEnumerable<string> Legend(PairPicture picture, ChartGlyphs glyphs, int width)
    {
        string?[] marks =
        [
            picture.Target is null ? null : $"{Body} body in band",
            picture.TargetString is null ? null : $"{String} string in band",
            picture.Target is null || picture.TargetString is null ? null : $"{Both} both",
            $"{glyphs.Reading} path",
            picture.Next is null ? null : $"{glyphs.Next} next",
            picture.End is null ? null : $"{glyphs.Settled} plan's end",
        ];
        return Paragraph.Broken(string.Join("  ", [.. marks.OfType<string>(), glyphs.Show($"{Line} body at the number beside it, {PlotText.Unit}")]), width, t => PlainText.Columns(t));
    }

    private static void Paint(PairPicture picture, CharPlane plane, ChartGlyphs glyphs)
    {
        var field = new PairField(picture.Map);
        var levels = LogTicks.Major(picture.Map.Bodies.Min(b => b.MilliPascalSeconds), picture.Map.Bodies.Max(b => b.MilliPascalSeconds));
        var (columns, rows) = (plane.Grid.Columns, plane.Grid.Rows);
        double X(int column) => plane.Across.At(column, columns);
        double Y(int row) => plane.Up.At(rows - 1 - row, rows);
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                if (Cell(picture, field, levels, X(column), Y(row), X(column + 1), row + 1 < rows ? Y(row + 1) : 0) is { } mark)
                {
                    plane.Grid.Put(column, row, mark);
                }
            }
        }

        foreach (var level in levels)
        {
            Number(plane, field, level, X, rows, glyphs);
        }

        foreach (var point in picture.Path)
        {
            plane.Put(point.Place.Body.Percent, point.Place.Second.Percent, glyphs.Reading);
        }

        if (picture.End is { } end)
        {
            plane.Put(end.Body.Percent, end.Second.Percent, glyphs.Settled);
        }

        if (picture.Next is { } next)
        {
            plane.Put(next.Body.Percent, next.Second.Percent, glyphs.Next);
        }
    }

    /// <summary>The mark of a cell whose neighbours to the right and below lie at other doses.</summary>
    private static char? Cell(PairPicture picture, PairField field, IReadOnlyList<double> levels, double x, double y, double right, double below)
    {
        var (body, length) = field.At(x, y);
        var bodyIn = picture.Target is { } band && body >= band.Low.MilliPascalSeconds && body <= band.High.MilliPascalSeconds;
        var stringIn = picture.TargetString is { } strings && length >= strings.Low.Millimeters && length <= strings.High.Millimeters;
        if (bodyIn || stringIn)
        {
            return bodyIn && stringIn ? Both : bodyIn ? Body : String;
        }

        var (beside, under) = (field.At(right, y).Body, field.At(x, below).Body);
        return levels.Any(l => (body < l) != (beside < l) || (body < l) != (under < l)) ? Line : null;
    }

    /// <summary>A level's number where its line meets the floor of the map.</summary>
    private static void Number(CharPlane plane, PairField field, double level, Func<int, double> across, int rows, ChartGlyphs glyphs)
    {
        for (var column = 0; column + 1 < plane.Grid.Columns; column++)
        {
            if (field.At(across(column), 0).Body < level && field.At(across(column + 1), 0).Body >= level)
            {
                var text = CharAxis.Label(level, glyphs);
                if (column + 1 + text.Length <= plane.Grid.Columns)
                {
                    plane.Grid.Write(column + 1, rows - 1, text);
                }

                return;
            }
        }
    }
}
