using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>A converted reading brought to the reference temperature.</summary>
/// <param name="At">The reference temperature.</param>
/// <param name="Factor">What the converted value is multiplied by.</param>
/// <param name="Uncertainty">
/// The relative standard uncertainty of the value there: the conversion's and the correction's together.
/// </param>
public sealed record ReferenceValue(Temperature At, double Factor, Percentage Uncertainty)
{
    /// <summary>Brings a reading to the reference temperature by <see cref="TemperatureCorrection"/>.</summary>
    /// <param name="reading">The converted reading.</param>
    /// <param name="at">The temperature at which it was read.</param>
    /// <param name="reference">The temperature wanted.</param>
    /// <param name="coefficient">How the liquid thins with warmth.</param>
    /// <returns>Null where the two lie further apart than <see cref="TemperatureCorrection.GreatestDistance"/>.</returns>
    public static ReferenceValue? Of(
        ConvertedReading reading, Temperature at, Temperature reference, TemperatureCoefficient coefficient)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (Math.Abs(at.Celsius - reference.Celsius) > TemperatureCorrection.GreatestDistance)
        {
            return null;
        }

        var (shift, sd) = TemperatureCorrection.LnShift(at, reference, coefficient);
        var all = Math.Sqrt((reading.Uncertainty.Fraction * reading.Uncertainty.Fraction) + (sd * sd));
        return new(reference, Math.Exp(shift), Percentage.FromFraction(all));
    }
}
