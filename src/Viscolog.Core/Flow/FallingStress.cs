using System.Collections.Immutable;

namespace Viscolog.Core.Flow;

/// <summary>Finds whether stress falls as the rate grows by more than the points scatter.</summary>
internal static class FallingStress
{
    /// <summary>A fall of ln stress that is let pass where there is no scatter.</summary>
    private const double LetPass = 0.05;

    /// <summary>Standard deviations of the difference of two groups that are let pass besides.</summary>
    private const double Deviations = 3;

    private const int MostGroups = 12;

    /// <summary>The rate in 1/s from which on the stress has fallen; null where it never does.</summary>
    /// <param name="points">In any order.</param>
    public static double? From(ImmutableArray<FlowPoint> points)
    {
        (double LnRate, double LnStress)[] sorted =
            [.. points.Select(p => (Math.Log(p.Rate.PerSecond), Math.Log(p.Stress.Pascals))).OrderBy(p => p.Item1).ThenBy(p => p.Item2)];
        var scatter = Scatter(sorted);
        var groups = Math.Min(MostGroups, sorted.Length);
        (double LnRate, double LnStress, int Count)? highest = null;
        for (var g = 0; g < groups; g++)
        {
            var group = sorted[(g * sorted.Length / groups)..((g + 1) * sorted.Length / groups)];
            var (rate, stress) = (group.Average(p => p.LnRate), group.Average(p => p.LnStress));
            if (highest is var (topRate, topStress, count) && rate > topRate
                && topStress - stress > LetPass + (Deviations * scatter * Math.Sqrt((1.0 / count) + (1.0 / group.Length))))
            {
                return Math.Exp(topRate);
            }

            highest = highest is null || stress > highest.Value.LnStress ? (rate, stress, group.Length) : highest;
        }

        return null;
    }

    /// <summary>
    /// Standard deviation of a point about the middle of its neighbours, as one point's: the middle of two has half a point's variance.
    /// </summary>
    private static double Scatter((double LnRate, double LnStress)[] sorted)
    {
        var off = 0.0;
        for (var i = 1; i < sorted.Length - 1; i++)
        {
            var d = sorted[i].LnStress - ((sorted[i - 1].LnStress + sorted[i + 1].LnStress) / 2);
            off += d * d;
        }

        return sorted.Length < 4 ? 0 : Math.Sqrt(off / (sorted.Length - 2) / 1.5);
    }
}
