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
        var uncertainty = Repeatability.Fraction / Math.Sqrt(read.Count);
        var chance = Conformity.Chance(mean, uncertainty,
            Math.Log(Math.Max(Shortest / 2, band.Low.Millimeters)), Math.Log(band.High.Millimeters));
        return new(Length.FromMillimeters(Math.Exp(mean)), Percentage.FromFraction(uncertainty), band, Percentage.FromFraction(chance));
    }
}
