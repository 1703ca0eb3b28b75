using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>A batch's string length against its band.</summary>
/// <param name="Mean">Geometric mean of the pot's readings as it is now; null where none was taken.</param>
/// <param name="Uncertainty">Its relative standard uncertainty.</param>
/// <param name="Band">The band.</param>
/// <param name="Chance">Probability of conformity; null without a reading.</param>
public sealed record StringCheck(Length? Mean, Percentage Uncertainty, StringBand Band, Percentage? Chance)
{
    /// <summary>Relative standard deviation of repeat readings (from memory).</summary>
    public static Percentage Repeatability { get; } = Percentage.FromPercent(20);

    /// <summary>Below this a string counts as this long, in mm: a length of 0 has no logarithm.</summary>
    private const double Shortest = 0.5;

    internal static StringCheck Of(IReadOnlyCollection<Length> read, StringBand band)
    {
        if (read.Count == 0)
        {
            return new(null, default, band, null);
        }

        var mean = read.Average(l => Math.Log(Math.Max(Shortest, l.Millimeters)));
        return new(
            Length.FromMillimeters(Math.Exp(mean)), UncertaintyOf(read.Count), band,
            Percentage.FromFraction(ChanceOf(mean, read.Count, band)));
    }

    /// <summary>How many more strings would decide if their mean stays where it is; null where none would.</summary>
    internal int? MoreReadings() => Mean is { } mean
        ? Conformity.MoreReadings(more => ChanceOf(Math.Log(Math.Max(Shortest, mean.Millimeters)), Count + more, Band)) : null;

    private double Count => Math.Pow(Repeatability.Fraction / Uncertainty.Fraction, 2);

    private static Percentage UncertaintyOf(double count) => Percentage.FromFraction(Repeatability.Fraction / Math.Sqrt(count));

    private static double ChanceOf(double mean, double count, StringBand band) => Conformity.Chance(
        mean, UncertaintyOf(count).Fraction, Math.Log(Math.Max(Shortest / 2, band.Low.Millimeters)), Math.Log(band.High.Millimeters),
        double.PositiveInfinity);
}
