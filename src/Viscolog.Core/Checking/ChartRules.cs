namespace Viscolog.Core.Checking;

/// <summary>Looks for the patterns of <see cref="ChartRule"/>.</summary>
internal static class ChartRules
{
    private const int Run = 8;

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
