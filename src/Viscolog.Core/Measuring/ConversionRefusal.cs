using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>Why a reading can't become a quantity. The set of cases is closed.</summary>
public abstract record ConversionRefusal
{
    private protected ConversionRefusal()
    {
    }

    /// <summary>Something that the method needs is not stated.</summary>
    /// <param name="Part">What.</param>
    public sealed record Missing(MissingPart Part) : ConversionRefusal;

    /// <summary>A torque beyond full scale.</summary>
    /// <param name="Torque">Of full scale.</param>
    public sealed record BeyondFullScale(Percentage Torque) : ConversionRefusal;

    /// <summary>A time outside the limits of a cup.</summary>
    /// <param name="Cup">The cup.</param>
    /// <param name="Time">The time read; above the greatest that the cup allows, the liquid is too thick for it, else too thin.</param>
    /// <param name="Instead">The cup to try; null where no other is known.</param>
    /// <param name="About">The time that <paramref name="Instead"/> would take; null where the reading does not tell.</param>
    public sealed record OutsideCup(CupEquation Cup, TimeSpan Time, CupEquation? Instead, TimeSpan? About) : ConversionRefusal;

    /// <summary>Krebs units beyond the paddle's useful range.</summary>
    /// <param name="Units">In KU.</param>
    /// <param name="IsThin">Whether the liquid is too thin for it; else it is too thick.</param>
    public sealed record OutsidePaddle(double Units, bool IsThin) : ConversionRefusal;

    /// <summary>The ball is not denser than the liquid.</summary>
    public sealed record BallFloats : ConversionRefusal;

    /// <summary>The ball is too wide for the jar.</summary>
    /// <param name="Width">Of the jar's width.</param>
    public sealed record BallTooWide(Percentage Width) : ConversionRefusal;

    /// <summary>The ball falls too fast for Stokes' law.</summary>
    /// <param name="Reynolds">The Reynolds number.</param>
    /// <param name="Smaller">A diameter of a ball of the same density that would creep.</param>
    public sealed record BallTooFast(double Reynolds, Length Smaller) : ConversionRefusal;

    /// <summary>A fall that took no time.</summary>
    public sealed record NoFall : ConversionRefusal;

    /// <summary>Too small a slump: the paste is too stiff.</summary>
    /// <param name="Slump">As read.</param>
    public sealed record SlumpTooSmall(Length Slump) : ConversionRefusal;

    /// <summary>Too large a slump: the paste is too thin.</summary>
    /// <param name="Slump">As read.</param>
    public sealed record SlumpTooLarge(Length Slump) : ConversionRefusal;
}

/// <summary>What a method may need besides its reading.</summary>
public enum MissingPart
{
    /// <summary>The density of a liquid whose cup tells a kinematic viscosity only.</summary>
    CupDensity,

    /// <summary>Viscosity for each per cent of torque.</summary>
    TorqueFactor,

    /// <summary>A ball's diameter and density, and the distance that is timed.</summary>
    Ball,

    /// <summary>The density of the liquid that a ball falls in.</summary>
    BallLiquidDensity,

    /// <summary>The height of a slump's cylinder.</summary>
    CylinderHeight,

    /// <summary>The density of a paste that slumps.</summary>
    PasteDensity,
}
