namespace Viscolog.Plots;

/// <summary>Where a logarithmic axis is marked.</summary>
internal static class LogTicks
{
    /// <summary>Round values in the range: powers of ten over many decades, 1–2–5 over few, even steps over a part of one.</summary>
    /// <param name="low">Above 0.</param>
    /// <param name="high">Above <paramref name="low"/>.</param>
    public static IReadOnlyList<double> Major(double low, double high)
    {
        var decades = Math.Log10(high / low);
        var powers = Of([1], low, high);
        if (decades > 8)
        {
            return [.. powers.Where((_, i) => i % (int)Math.Ceiling(decades / 8) == 0)];
        }

        if (decades > 3.2)
        {
            return powers;
        }

        var few = Of([1, 2, 5], low, high);
        return few.Count >= 3 ? few : RoundSteps.Between(low, high, 5);
    }

    /// <summary>The multiples 1 to 9 of each power of ten in the range.</summary>
    public static IReadOnlyList<double> Minor(double low, double high) => Of([1, 2, 3, 4, 5, 6, 7, 8, 9], low, high);

    private static List<double> Of(double[] multiples, double low, double high)
    {
        var result = new List<double>();
        for (var power = (int)Math.Floor(Math.Log10(low)); power <= Math.Ceiling(Math.Log10(high)); power++)
        {
            result.AddRange(multiples.Select(m => Math.Round(m) * Math.Pow(10, power)).Where(v => v >= low && v <= high));
        }

        return result;
    }
}
