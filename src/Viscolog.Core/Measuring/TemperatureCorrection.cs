using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// Brings a viscosity to the reference temperature: ln η(T_ref) = ln η(T) + B·(1/T_ref − 1/T), T in kelvin (Arrhenius–Andrade; Andrade,
/// Philosophical Magazine 17 (1934) 497–511 and 698–732).
/// </summary>
public static class TemperatureCorrection
{
    /// <summary>The coefficient B in K used where none is known (from memory).</summary>
    public const double DefaultCoefficient = 2000;

    /// <summary>Standard deviation of the default coefficient in K (from memory).</summary>
    public const double DefaultCoefficientSd = 1000;

    /// <summary>The greatest distance from the reference temperature, in °C, over which a corrected reading may carry advice.</summary>
    public const double GreatestDistance = 10;

    /// <summary>1/T_ref − 1/T in 1/K, which a coefficient in K turns into the shift of ln η; 0 where the temperatures agree.</summary>
    /// <param name="at">Temperature of the reading.</param>
    /// <param name="reference">Reference temperature.</param>
    public static double Distance(Temperature at, Temperature reference) => (1 / reference.Kelvin) - (1 / at.Kelvin);

    /// <summary>What to add to ln η to bring it from one temperature to the reference, and the standard deviation of that.</summary>
    /// <param name="at">Temperature of the reading.</param>
    /// <param name="reference">Reference temperature.</param>
    /// <param name="coefficient">The liquid's coefficient; null for the default.</param>
    /// <returns>Both in ln units; both 0 where the temperatures agree.</returns>
    public static (double Shift, double Sd) LnShift(Temperature at, Temperature reference, TemperatureCoefficient? coefficient = null)
    {
        var distance = Distance(at, reference);
        var known = coefficient ?? TemperatureCoefficient.Default;
        return (known.Kelvin * distance, known.SdKelvin * Math.Abs(distance));
    }
}
