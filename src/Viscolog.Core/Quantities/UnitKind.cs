namespace Viscolog.Core.Quantities;

/// <summary>What a unit measures.</summary>
public enum UnitKind
{
    /// <summary>Dynamic viscosity, kept in mPa·s.</summary>
    DynamicViscosity,

    /// <summary>Kinematic viscosity, kept in mm²/s.</summary>
    KinematicViscosity,

    /// <summary>Mass, kept in g.</summary>
    Mass,

    /// <summary>Volume, kept in mL.</summary>
    Volume,

    /// <summary>Temperature, kept in °C.</summary>
    Temperature,
}
