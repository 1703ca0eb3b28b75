namespace Viscolog.Benchmarks;

/// <summary>A share with its 95 % interval (Wilson, Journal of the American Statistical Association 22 (1927) 209–212).</summary>
internal static class Wilson
{
    public static string Share(int count, int of)
    {
        const double z = 1.96;
        double n = of;
        var p = count / n;
        var middle = (p + (z * z / (2 * n))) / (1 + (z * z / n));
        var half = z / (1 + (z * z / n)) * Math.Sqrt((p * (1 - p) / n) + (z * z / (4 * n * n)));
        return FormattableString.Invariant($"{100 * p:0.0} % ({100 * (middle - half):0.0} to {100 * (middle + half):0.0})");
    }
}
