using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>A reading as a quantity, at the temperature of the reading.</summary>
/// <param name="Formula">How it was converted: shear and sources go with it.</param>
public sealed record ConvertedReading(ReadingFormula Formula)
{
    /// <summary>
    /// The shear rate that a yield stress is divided by to be stated as a body: a paste at the edge of flowing resists a slow stir of
    /// 1/s with at least its yield stress. So 1 Pa of yield stress counts as 1000 mPa·s (a rule of this project, to put slumps on the
    /// same scale).
    /// </summary>
    public static readonly ShearRate YieldRate = ShearRate.FromPerSecond(1);

    /// <summary>The cup; null for any other method.</summary>
    public CupEquation? Cup { get; init; }

    /// <summary>Speed of a spindle in 1/min; null where it is not known.</summary>
    public double? RevolutionsPerMinute { get; init; }

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
    public ImmutableArray<ReadingWarning> Warnings { get; init; } = [];

    /// <summary>Which cup, speed or size would suit better; null where this one does.</summary>
    public BetterChoice? Better { get; init; }

    /// <summary>All three uncertainties together: a relative standard uncertainty.</summary>
    public Percentage Uncertainty => Percentage.FromFraction(Math.Sqrt(
        (Repeatability.Fraction * Repeatability.Fraction)
        + (ReadingUncertainty.Fraction * ReadingUncertainty.Fraction)
        + (CalibrationUncertainty.Fraction * CalibrationUncertainty.Fraction)));

    /// <summary>
    /// What the dose–response curve is made of: the dynamic viscosity, or a yield stress over <see cref="YieldRate"/>; null where neither
    /// is known.
    /// </summary>
    public Viscosity? Body => Dynamic
        ?? (YieldStress is { Pascals: > 0 } stress ? Viscosity.FromMilliPascalSeconds(1000 * stress.Pascals / YieldRate.PerSecond) : null);
}

/// <summary>How a reading is converted.</summary>
public enum ReadingFormula
{
    /// <summary>Not at all: the instrument worked the viscosity out itself.</summary>
    AsRead,

    /// <summary>By the equation of a cup.</summary>
    Cup,

    /// <summary>From Krebs units, between oils.</summary>
    Krebs,

    /// <summary>By the instrument's factor for a torque.</summary>
    Torque,

    /// <summary>By Stokes' law of a falling ball.</summary>
    FallingBall,

    /// <summary>From the slump of a cylinder.</summary>
    Slump,
}
