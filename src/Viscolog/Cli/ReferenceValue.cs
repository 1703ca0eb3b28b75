using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;

namespace Viscolog.Cli;

/// <summary>A reading brought to the reference temperature, or why it can't be.</summary>
internal sealed record ReferenceValue(Temperature At, double Factor, Percentage Uncertainty, string? Reason)
{
    public static ReferenceValue Of(ConvertedReading reading, Temperature at, Temperature reference, TemperatureCoefficient coefficient)
    {
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
