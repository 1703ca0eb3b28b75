using Viscolog.Text;

namespace Viscolog.Plots.Characters;

/// <summary>The inside of a chart in characters: from values to the cells and dots of a grid.</summary>
/// <param name="Grid">The grid.</param>
/// <param name="Across">From left to right.</param>
/// <param name="Up">From the bottom to the top.</param>
internal sealed record CharPlane(CharGrid Grid, Axis Across, Axis Up)
{
    /// <summary>Dots left out of a dashed line.</summary>
    private const int Gap = 3;

    public int Column(double x) => Across.Place(x, Grid.Columns);

    public int Row(double y) => Grid.Rows - 1 - Up.Place(y, Grid.Rows);

    /// <summary>A level line from the left edge to the right.</summary>
    public void Level(double y, char mark)
    {
        for (var column = 0; column < Grid.Columns; column++)
        {
            Grid.Put(column, Row(y), mark);
        }
    }

    /// <summary>A line of dots through points in rising order of x.</summary>
    /// <param name="points">At least two, else nothing is drawn.</param>
    /// <param name="plain">What stands for a dot where there are only plain characters.</param>
    /// <param name="every">1 for a solid line, more for a dotted one.</param>
    /// <param name="dash">Dots that are left out after so many that are drawn; 0 for none.</param>
    public void Trace(IReadOnlyList<Spot> points, char plain, int every = 1, int dash = 0)
    {
        int? before = null;
        for (var column = 0; column < Grid.DotColumns; column++)
        {
            if (Value(points, Across.At(column, Grid.DotColumns), Up.IsLogarithmic) is not { } value)
            {
                before = null;
                continue;
            }

            var row = Grid.DotRows - 1 - Up.Place(value, Grid.DotRows);
            if (dash > 0 && column % (dash + Gap) >= dash)
            {
                before = null;
                continue;
            }

            if (column % every == 0)
            {
                Grid.Dot(column, row, plain);
            }

            if (every == 1 && before is { } last)
            {
                Close(column, last, row, plain);
            }

            before = row;
        }
    }

    /// <summary>Words in the middle.</summary>
    public void Middle(string text)
    {
        var lines = Paragraph.Broken(text, Grid.Columns - 2, t => PlainText.Columns(t));
        for (var i = 0; i < lines.Count; i++)
        {
            Grid.Write((Grid.Columns - lines[i].Length) / 2, Math.Max(0, (Grid.Rows - lines.Count) / 2) + i, lines[i]);
        }
    }

    /// <summary>The value at a place, on straight lines of the value or of its logarithm; null outside the samples.</summary>
    private static double? Value(IReadOnlyList<Spot> points, double x, bool onLogarithm)
    {
        var next = 0;
        while (next < points.Count && points[next].X < x)
        {
            next++;
        }

        if (next == points.Count || (next == 0 && points[0].X > x))
        {
            return null;
        }

        var right = points[next];
        if (next == 0 || right.X <= points[next - 1].X)
        {
            return right.Y;
        }

        var left = points[next - 1];
        var part = (x - left.X) / (right.X - left.X);
        return onLogarithm ? left.Y * Math.Pow(right.Y / left.Y, part) : left.Y + (part * (right.Y - left.Y));
    }

    /// <summary>Fills the gap between two neighbouring columns' dots, half of it in each.</summary>
    private void Close(int column, int before, int now, char plain)
    {
        var step = Math.Sign(now - before);
        for (var row = before + step; row != now && step != 0; row += step)
        {
            var nearer = Math.Abs(row - before) < Math.Abs(now - row) ? column - 1 : column;
            Grid.Dot(nearer, Math.Clamp(row, -1, Grid.DotRows), plain);
        }
    }
}
