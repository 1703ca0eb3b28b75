namespace Viscolog.Plots;

/// <summary>Evenly spaced round values: steps of 1, 2 or 5 times a power of ten.</summary>
internal static class RoundSteps
{
    /// <summary>The round values in the range.</summary>
    /// <param name="low">Where to begin.</param>
    /// <param name="high">Above <paramref name="low"/>.</param>
    /// <param name="count">About how many steps.</param>
    public static IReadOnlyList<double> Between(double low, double high, int count)
    {
        var raw = (high - low) / Math.Max(count, 1);
        var power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        var step = (raw / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 } * power;
        var result = new List<double>();
        for (var k = Math.Ceiling(low / step); k * step <= high && result.Count < 1000; k++)
        {
            result.Add(k * step);
        }

        return result;
    }
}
