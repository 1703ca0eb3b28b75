namespace Viscolog.Core.Measuring;

/// <summary>What kind of instrument a method uses; readings of different kinds meet different shear and are never fitted together.</summary>
public enum MethodKind
{
    /// <summary>A viscosity read off directly.</summary>
    Direct,

    /// <summary>An efflux cup: seconds to run out.</summary>
    EffluxCup,

    /// <summary>A dip cup: seconds to run out.</summary>
    DipCup,

    /// <summary>A Krebs paddle: Krebs units.</summary>
    Krebs,

    /// <summary>A rotational viscometer: torque at a speed.</summary>
    Rotational,

    /// <summary>A ball falling in a vessel.</summary>
    FallingBall,

    /// <summary>A slumping cylinder.</summary>
    Slump,
}
