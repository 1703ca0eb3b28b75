using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>What to know before a converted reading is used. The set of cases is closed.</summary>
public abstract record ReadingWarning
{
    private protected ReadingWarning()
    {
    }

    /// <summary>A torque so low that the scale's own error counts.</summary>
    /// <param name="Torque">Of full scale.</param>
    /// <param name="Error">The scale's error over the value.</param>
    public sealed record LowTorque(Percentage Torque, Percentage Error) : ReadingWarning;

    /// <summary>Krebs units are interpolated between three oils.</summary>
    public sealed record BetweenOils : ReadingWarning;

    /// <summary>Krebs units lie beyond the three oils.</summary>
    public sealed record BeyondOils : ReadingWarning;

    /// <summary>No jar's width is stated, so the wall is left out.</summary>
    /// <param name="Excess">How far that puts the value up in a jar of ten balls' width.</param>
    public sealed record NoJar(Percentage Excess) : ReadingWarning;

    /// <summary>A fall that is hard to time by hand.</summary>
    public sealed record ShortFall : ReadingWarning;

    /// <summary>Ball and liquid are nearly equal in density.</summary>
    public sealed record NearlyFloats : ReadingWarning;

    /// <summary>A slump so small that the formula is known to run low.</summary>
    public sealed record SmallSlump : ReadingWarning;

    /// <summary>A slump so large that it tells little.</summary>
    public sealed record LargeSlump : ReadingWarning;

    /// <summary>A cylinder that the formula is not for.</summary>
    /// <param name="HeightOverDiameter">Its shape.</param>
    public sealed record OddCylinder(double HeightOverDiameter) : ReadingWarning;
}
