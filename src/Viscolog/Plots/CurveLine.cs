namespace Viscolog.Plots;

/// <summary>Values between the samples of a curve.</summary>
internal static class CurveLine
{
    /// <summary>The value at a place, on straight lines of the value or of its logarithm; null outside the samples.</summary>
    public static double? At(IReadOnlyList<(double X, double Y)> points, double x, bool onLogarithm)
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
}
