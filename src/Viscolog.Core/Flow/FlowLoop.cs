using System.Collections.Immutable;

namespace Viscolog.Core.Flow;

/// <summary>
/// Rates first going up and then coming down: what the way up holds more than the way down is the loop that thixotropy leaves.
/// </summary>
/// <param name="Up">The points on the way up, the highest among them.</param>
/// <param name="Down">The points on the way down, the highest among them.</param>
public sealed record FlowLoop(ImmutableArray<FlowPoint> Up, ImmutableArray<FlowPoint> Down)
{
    /// <summary>Points on either way below which no loop is seen.</summary>
    private const int Least = 3;

    /// <summary>
    /// The area between both ways in Pa/s (W/m³), by trapezoids over the rates they share; above 0 where the way up lies higher.
    /// </summary>
    public double Area => Overlap(p => p.Up - p.Down);

    /// <summary>The area over that under the way up.</summary>
    public double Part => Area / Overlap(p => p.Up);

    /// <summary>The loop in a series; null where the rates do not go up and come down, each over three points or more.</summary>
    /// <param name="points">In the order in which they were read.</param>
    public static FlowLoop? Find(ImmutableArray<FlowPoint> points)
    {
        var top = 0;
        for (var i = 1; i < points.Length; i++)
        {
            top = points[i].Rate > points[top].Rate ? i : top;
        }

        // A top read twice belongs to either way once.
        var back = top + 1 < points.Length && points[top + 1].Rate == points[top].Rate ? top + 1 : top;
        ImmutableArray<FlowPoint> up = [.. points.Take(top + 1)];
        ImmutableArray<FlowPoint> down = [.. points.Skip(back)];
        return up.Length >= Least && down.Length >= Least && Rises(up) && Rises([.. down.Reverse()]) ? new(up, down) : null;
    }

    private static bool Rises(ImmutableArray<FlowPoint> points) => points.Zip(points.Skip(1)).All(p => p.First.Rate < p.Second.Rate);

    private double Overlap(Func<(double Up, double Down), double> height)
    {
        ImmutableArray<FlowPoint> down = [.. Down.Reverse()];
        var low = Math.Max(Up[0].Rate.PerSecond, down[0].Rate.PerSecond);
        var high = Math.Min(Up[^1].Rate.PerSecond, down[^1].Rate.PerSecond);
        double[] rates = [.. Up.Concat(down).Select(p => p.Rate.PerSecond).Where(r => r >= low && r <= high).Distinct().Order()];
        var area = 0.0;
        for (var i = 1; i < rates.Length; i++)
        {
            area += (rates[i] - rates[i - 1]) * (Height(rates[i - 1]) + Height(rates[i])) / 2;
        }

        return area;
        double Height(double rate) => height((At(Up, rate), At(down, rate)));
    }

    private static double At(ImmutableArray<FlowPoint> rising, double rate)
    {
        var i = 1;
        while (i < rising.Length - 1 && rising[i].Rate.PerSecond < rate)
        {
            i++;
        }

        var (a, b) = (rising[i - 1], rising[i]);
        var part = (rate - a.Rate.PerSecond) / (b.Rate.PerSecond - a.Rate.PerSecond);
        return a.Stress.Pascals + (part * (b.Stress.Pascals - a.Stress.Pascals));
    }
}
