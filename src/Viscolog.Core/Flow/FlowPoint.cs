using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>One point of a flow curve.</summary>
/// <param name="Rate">Shear rate.</param>
/// <param name="Stress">Shear stress at that rate; above 0.</param>
public sealed record FlowPoint(ShearRate Rate, Stress Stress)
{
    /// <summary>Shear stress at that rate; above 0.</summary>
    public Stress Stress { get; } = Stress.Pascals > 0
        ? Stress
        : throw new ArgumentOutOfRangeException(nameof(Stress), Stress.Pascals, "must be above 0");

    /// <summary>Speed of the bob in rad/s where the rate was worked out of one; else null.</summary>
    internal double? Turning { get; init; }

    /// <summary>Stress over rate.</summary>
    public Viscosity Viscosity => Viscosity.FromMilliPascalSeconds(1000 * Stress.Pascals / Rate.PerSecond);
}
