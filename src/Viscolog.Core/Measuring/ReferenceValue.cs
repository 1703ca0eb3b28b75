using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>A converted reading brought to the reference temperature, or why it can't be.</summary>
/// <param name="At">The reference temperature.</param>
/// <param name="Factor">What the converted value is multiplied by; 1 where it can't be brought there.</param>
/// <param name="Uncertainty">The relative standard uncertainty of the value there: the conversion's and the correction's together.</param>
/// <param name="Reason">Why the reading can't be brought there and what to do; null where it can.</param>
public sealed record ReferenceValue(Temperature At, double Factor, Percentage Uncertainty, string? Reason)
{
    /// <summary>Brings a reading to the reference temperature by <see cref="TemperatureCorrection"/>.</summary>
    /// <param name="reading">The converted reading.</param>
    /// <param name="at">The temperature at which it was read.</param>
    /// <param name="reference">The temperature wanted.</param>
    /// <param name="coefficient">How the liquid thins with warmth.</param>
    public static ReferenceValue Of(ConvertedReading reading, Temperature at, Temperature reference, TemperatureCoefficient coefficient)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (Math.Abs(at.Celsius - reference.Celsius) > TemperatureCorrection.GreatestDistance)
        {
            return new(reference, 1, default, FormattableString.Invariant(
                $"{at.Celsius:0.#} °C is more than {TemperatureCorrection.GreatestDistance} °C from {reference.Celsius:0.#} °C: a correction that far is a guess; bring the liquid nearer and read again"));
        }

        var (shift, sd) = TemperatureCorrection.LnShift(at, reference, coefficient);
        var all = Math.Sqrt((reading.Uncertainty.Fraction * reading.Uncertainty.Fraction) + (sd * sd));
        return new(reference, Math.Exp(shift), Percentage.FromFraction(all), null);
    }
}
