using MathNet.Numerics.Random;

namespace Viscolog.Core.Curves;

/// <summary>Starts moved from the given one by a seeded draw, near and far in turn.</summary>
internal sealed class MovedStarts(double[] start, FitOptions options)
{
    private readonly Xoshiro256StarStar random = new(options.Seed);
    private int drawn;

    /// <summary>The next start: within one decade or width of the given one, then within two, and so on in turn.</summary>
    public double[] Next()
    {
        int reach = 1 + (drawn++ % 2);
        var moved = new double[start.Length];
        for (int j = 0; j < start.Length; j++)
        {
            double draw = reach * ((2 * random.NextDouble()) - 1);
            moved[j] = options.StartWidths is { } widths ? start[j] + (draw * widths[j])
                : start[j] == 0 ? draw
                : start[j] * Math.Pow(10, draw);
        }

        return moved;
    }
}
