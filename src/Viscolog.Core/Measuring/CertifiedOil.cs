using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>An oil whose viscosity a certificate states.</summary>
/// <param name="Name">As on the bottle.</param>
/// <param name="Viscosity">Stated value.</param>
/// <param name="At">The temperature that it is stated at.</param>
/// <param name="Uncertainty">Relative standard uncertainty of the stated value (half of an expanded one with k = 2).</param>
public sealed record CertifiedOil(string Name, Viscosity Viscosity, Temperature At, Percentage Uncertainty)
{
    /// <summary>How the oil's viscosity goes with temperature; null for the default, which is poor for oils: read it within 0.5 °C then.</summary>
    public TemperatureCoefficient? TemperatureCoefficient { get; init; }
}
