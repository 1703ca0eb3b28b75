using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>A batch's pH against its band.</summary>
/// <param name="Mean">Mean of the pot's readings as it is now; null where none was taken.</param>
/// <param name="Band">The band.</param>
/// <param name="Chance">Probability of conformity; null without a reading.</param>
public sealed record AcidityCheck(Acidity? Mean, AcidityBand Band, Percentage? Chance)
{
    /// <summary>Standard uncertainty of a pH read at a bench, in pH units: meter, electrode and buffers (from memory).</summary>
    public const double StandardUncertainty = 0.1;

    /// <summary>Where alkali-swellable thickeners swell as a rule (from memory).</summary>
    internal static AcidityBand UsualForSwelling { get; } = new(Acidity.FromPh(8.5), Acidity.FromPh(9.5));

    /// <summary>Whether the pH is more likely below the band than in it.</summary>
    public bool IsTooLow => Mean is { } mean && mean < Band.Low;

    internal static AcidityCheck Of(IReadOnlyCollection<Acidity> read, AcidityBand band)
    {
        if (read.Count == 0)
        {
            return new(null, band, null);
        }

        var mean = read.Average(a => a.Ph);
        return new(Acidity.FromPh(mean), band,
            Percentage.FromFraction(Conformity.Chance(mean, StandardUncertainty, band.Low.Ph, band.High.Ph,
                double.PositiveInfinity)));
    }
}
