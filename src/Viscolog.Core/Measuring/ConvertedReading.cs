using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>A reading as a quantity, at the temperature of the reading.</summary>
/// <param name="Shear">The shear condition in words.</param>
/// <param name="Source">Where formula and figures come from.</param>
public sealed record ConvertedReading(string Shear, string Source)
{
    /// <summary>
    /// The shear rate that a yield stress is divided by to be stated as a body: a paste at the edge of flowing resists a slow stir of 1/s with
    /// at least its yield stress. So 1 Pa of yield stress counts as 1000 mPa·s (a rule of this project, to put slumps on the same scale).
    /// </summary>
    public static readonly ShearRate YieldRate = ShearRate.FromPerSecond(1);

    /// <summary>Kinematic viscosity; cups only.</summary>
    public KinematicViscosity? Kinematic { get; init; }

    /// <summary>Dynamic viscosity; null for a slump, and for a cup where no density is known.</summary>
    public Viscosity? Dynamic { get; init; }

    /// <summary>Yield stress; slump only.</summary>
    public Stress? YieldStress { get; init; }

    /// <summary>Typical shear rate; null where it can't be told.</summary>
    public ShearRate? Rate { get; init; }

    /// <summary>Relative standard deviation of repeat readings by the method.</summary>
    public Percentage Repeatability { get; init; }

    /// <summary>Relative standard uncertainty of this very reading beyond the repeatability: stopwatch, torque scale, ruler.</summary>
    public Percentage ReadingUncertainty { get; init; }

    /// <summary>Relative standard uncertainty that all readings by the instrument share: calibration, formula, sizes.</summary>
    public Percentage CalibrationUncertainty { get; init; }

    /// <summary>What to know before the value is used.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>Which cup, speed or size would suit better; null where this one does.</summary>
    public string? Better { get; init; }

    /// <summary>All three uncertainties together: a relative standard uncertainty.</summary>
    public Percentage Uncertainty => Percentage.FromFraction(Math.Sqrt(
        (Repeatability.Fraction * Repeatability.Fraction)
        + (ReadingUncertainty.Fraction * ReadingUncertainty.Fraction)
        + (CalibrationUncertainty.Fraction * CalibrationUncertainty.Fraction)));

    /// <summary>What the dose–response curve is made of: the dynamic viscosity, or a yield stress over <see cref="YieldRate"/>; null where neither is known.</summary>
    public Viscosity? Body => Dynamic
        ?? (YieldStress is { Pascals: > 0 } stress ? Viscosity.FromMilliPascalSeconds(1000 * stress.Pascals / YieldRate.PerSecond) : null);
}
