using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// What a method needs to know besides its reading: the instrument's factor or the sizes of what was built. A part that is not stated is
/// null.
/// </summary>
public sealed record MethodSetup
{
    /// <summary>Nothing stated.</summary>
    public static MethodSetup None { get; } = new();

    /// <summary>Rotational: viscosity for each per cent of full-scale torque, at the spindle and speed of the readings.</summary>
    public Viscosity? PerPercentTorque { get; init; }

    /// <summary>Falling ball: its diameter; above 0.</summary>
    public Length? BallDiameter { get; init; }

    /// <summary>Falling ball: its density.</summary>
    public Density? BallDensity { get; init; }

    /// <summary>Falling ball: the distance that is timed; above 0.</summary>
    public Length? Fall { get; init; }

    /// <summary>Falling ball: inner diameter of the jar; above 0. Null: the walls are taken to be far away.</summary>
    public Length? JarDiameter { get; init; }

    /// <summary>Slump: height of the cylinder that is lifted; above 0.</summary>
    public Length? CylinderHeight { get; init; }

    /// <summary>Slump: inner diameter of that cylinder; above 0. Null: taken to be as wide as high.</summary>
    public Length? CylinderDiameter { get; init; }

    /// <summary>How the liquid's viscosity goes with temperature; null where nobody measured it.</summary>
    public TemperatureCoefficient? TemperatureCoefficient { get; init; }
}
