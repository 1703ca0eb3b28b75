namespace Viscolog.Core.Charting;

/// <summary>
/// Constants of an individuals and moving-range chart as ISO 7870-2:2013 prints them (table of factors, n = 2; the printed digits seen in
/// textbook tables): three-digit
/// values, so that limits agree with those that others work out by hand. They follow from the normal law: d2 = 2/√π, d3 = √(2 − 4/π).
/// </summary>
public static class ShewhartConstants
{
    /// <summary>Mean range of two over the standard deviation.</summary>
    public const double D2 = 1.128;

    /// <summary>Upper limit of the moving range over its mean: 1 + 3·d3/d2.</summary>
    public const double D4 = 3.267;

    /// <summary>Standard deviations from the centre to a limit.</summary>
    public const double Limit = 3;

    /// <summary>
    /// Variance of the mean moving range of n values over its squared mean, exact for independent normal values: the ranges overlap, so
    /// neighbours go together.
    /// The covariance of neighbouring ranges is σ²·(4/π)(√¾ + π/12 − 1), that of two absolute normals with correlation −½.
    /// </summary>
    /// <param name="count">Values; 2 or more.</param>
    internal static double RelativeVariance(int count)
    {
        var mean = 2 / Math.Sqrt(Math.PI);
        var own = 2 - (mean * mean);
        var neighbour = (4 / Math.PI * (Math.Sqrt(0.75) + (Math.PI / 12))) - (mean * mean);
        var ranges = count - 1.0;
        return ((own * ranges) + (2 * neighbour * (ranges - 1))) / (ranges * ranges * mean * mean);
    }
}
