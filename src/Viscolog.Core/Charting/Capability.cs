using MathNet.Numerics.Distributions;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Charting;

/// <summary>
/// How a process fits its limits: min((U − m)/3σ, (m − L)/3σ), with an interval by Bissell's formula (Applied Statistics 39 (1990)
/// 331–340):
/// c ± z·√(1/(9n) + c²/(2ν)), ν the degrees of freedom of σ.
/// </summary>
/// <param name="Index">The index.</param>
/// <param name="Low">Low end of the interval.</param>
/// <param name="High">High end of the interval.</param>
/// <param name="Values">Values that it rests on.</param>
public sealed record Capability(double Index, double Low, double High, int Values)
{
    /// <summary>The chance that the interval holds the true index; two-sided.</summary>
    public static Percentage Level { get; } = Percentage.FromPercent(95);

    /// <summary>Works it out.</summary>
    /// <param name="mean">Of the process.</param>
    /// <param name="sigma">Its standard deviation; above 0.</param>
    /// <param name="count">Values in the mean; 1 or more.</param>
    /// <param name="freedom">Degrees of freedom of the standard deviation; above 0.</param>
    /// <param name="low">Lower limit; null for none.</param>
    /// <param name="high">Upper limit; null for none.</param>
    /// <returns>Null where no limit is stated.</returns>
    internal static Capability? Of(double mean, double sigma, int count, double freedom, double? low, double? high)
    {
        double? below = low is { } l ? (mean - l) / (3 * sigma) : null;
        double? above = high is { } h ? (h - mean) / (3 * sigma) : null;
        if ((below is null ? above : above is null ? below : Math.Min(below.Value, above.Value)) is not { } index)
        {
            return null;
        }

        var z = Normal.InvCDF(0, 1, (1 + Level.Fraction) / 2);
        var half = z * Math.Sqrt((1 / (9.0 * count)) + (index * index / (2 * freedom)));
        return new(index, index - half, index + half, count);
    }
}
