namespace Viscolog.Core.Charting;

/// <summary>Looks for the patterns of <see cref="ChartRule"/>.</summary>
internal static class ChartRules
{
    private const int Run = ControlChart.LongestRule;

    /// <summary>Every signal, by place and then by rule. The point that completes a pattern is named, and is part of it.</summary>
    /// <param name="points">The points.</param>
    /// <param name="away">How far each lies from the mean, in standard deviations.</param>
    public static IEnumerable<ChartSignal> Of(IReadOnlyList<ChartPoint> points, IReadOnlyList<double> away)
    {
        for (var i = 0; i < points.Count; i++)
        {
            foreach (var rule in Enum.GetValues<ChartRule>().Where(r => Breaks(r, away, i)))
            {
                yield return new(i, points[i].Batch, rule, away[i] > 0);
            }
        }
    }

    private static bool Breaks(ChartRule rule, IReadOnlyList<double> away, int i) => rule switch
    {
        ChartRule.BeyondLimits => Math.Abs(away[i]) > ShewhartConstants.Limit,
        ChartRule.TwoOfThree => Holds(away, i, 2, 3, 2),
        ChartRule.FourOfFive => Holds(away, i, 4, 5, 1),
        _ => Holds(away, i, Run, Run, 0),
    };

    /// <summary>Whether the point and enough of those before it lie beyond so many deviations on its side.</summary>
    private static bool Holds(IReadOnlyList<double> away, int i, int needed, int among, double deviations)
    {
        var side = Math.Sign(away[i]);
        if (side == 0 || side * away[i] <= deviations)
        {
            return false;
        }

        var found = 0;
        for (var j = Math.Max(0, i - among + 1); j <= i; j++)
        {
            found += side * away[j] > deviations ? 1 : 0;
        }

        return found >= needed;
    }
}

/// <summary>The four rules by which a chart gives a signal (Western Electric, Statistical Quality Control Handbook, 1956; from
/// memory).</summary>
public enum ChartRule
{
    /// <summary>One point beyond the limits.</summary>
    BeyondLimits,

    /// <summary>Two of three points in a row beyond two thirds of the way to the same limit.</summary>
    TwoOfThree,

    /// <summary>Four of five points in a row beyond one third of the way to the same limit.</summary>
    FourOfFive,

    /// <summary>Eight points in a row on one side of the mean.</summary>
    EightOnOneSide,
}

/// <summary>A rule that a chart breaks.</summary>
/// <param name="Place">The place of the point that completes the pattern, from 0.</param>
/// <param name="Batch">Its batch.</param>
/// <param name="Rule">The rule.</param>
/// <param name="IsHigh">Whether the pattern lies above the mean.</param>
public sealed record ChartSignal(int Place, string Batch, ChartRule Rule, bool IsHigh);
