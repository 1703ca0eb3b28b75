using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// A vane turned slowly in a paste until it yields: the greatest torque tells the yield stress (Steffe, Rheological Methods in Food
/// Process Engineering, 2nd edition 1996, p. 246).
/// </summary>
public static class Vane
{
    /// <summary>τ₀ = 2M/(π·d³)/(h/d + 1/3): the stress alike on the wall and the ends.</summary>
    /// <param name="greatest">The greatest torque.</param>
    /// <param name="diameter">Of the vane; above 0.</param>
    /// <param name="height">Of the vane; above 0.</param>
    public static Stress YieldStress(Torque greatest, Length diameter, Length height)
    {
        var d = Guard.Positive(diameter.Millimeters) / 1000;
        var ratio = Guard.Positive(height.Millimeters) / diameter.Millimeters;
        return Stress.FromPascals(2 * greatest.NewtonMeters / (Math.PI * d * d * d) / (ratio + (1.0 / 3)));
    }

    /// <summary>τ₀ = 2a/(π·d²), a the slope of the greatest torque over the height of several vanes: the ends fall out.</summary>
    /// <param name="newtons">The slope in N·m per m; above 0.</param>
    /// <param name="diameter">Of the vanes; above 0.</param>
    public static Stress YieldStressFromSlope(double newtons, Length diameter)
    {
        var d = Guard.Positive(diameter.Millimeters) / 1000;
        return Stress.FromPascals(2 * Guard.Positive(newtons) / (Math.PI * d * d));
    }
}
