using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>A certified oil read by a method.</summary>
/// <param name="Condition">Method and speed.</param>
/// <param name="Oil">The oil.</param>
/// <param name="Read">What the method told.</param>
/// <param name="At">Temperature of the oil.</param>
/// <param name="On">The day.</param>
public sealed record OilReading(ShearCondition Condition, CertifiedOil Oil, Viscosity Read, Temperature At, DateOnly On)
{
    /// <summary>ln(read/certified), the reading brought to the certificate's temperature, and its standard uncertainty without the repeatability.</summary>
    public (double Ln, double Sd) Deviation
    {
        get
        {
            var (shift, sd) = TemperatureCorrection.LnShift(At, Oil.At, Oil.TemperatureCoefficient);
            return (Read.Ln + shift - Oil.Viscosity.Ln, Math.Sqrt((sd * sd) + (Oil.Uncertainty.Fraction * Oil.Uncertainty.Fraction)));
        }
    }
}
