namespace Viscolog.Core.Curves;

/// <summary>
/// The numbers behind the belief of two thickeners; one place, version 2. All from memory and set on tuning pots; doses are over the top of
/// each thickener's usual range, values in ln units.
/// </summary>
internal static class PairSettings
{
    /// <summary>Fewer draws than for one thickener, as level and coefficients are not drawn but integrated out.</summary>
    public static BeliefEffort Effort { get; } = BeliefEffort.Full with { FirstDraws = 1200, LaterDraws = 600 };

    /// <summary>Rise of ln body over the string thickener's range in the unthickened base: mean.</summary>
    public const double BodyRiseMean = 1.2;

    /// <summary>Its standard deviation.</summary>
    public const double BodyRiseSd = 0.65;

    /// <summary>What that rise gains over the body thickener's range: mean.</summary>
    public const double CrossMean = 0.3;

    /// <summary>Its standard deviation.</summary>
    public const double CrossSd = 0.5;

    /// <summary>Standard deviation of ln of the exponent of the dose in that rise; its median is 1.</summary>
    public const double ExponentLogSd = 0.25;

    /// <summary>Variance of the stray along the string thickener's dose beyond that along the body thickener's, over the whole range.</summary>
    public const double StrayAlongString = 0.02;

    /// <summary>Relative standard deviation of repeat string readings (from memory).</summary>
    public const double StringRepeatability = 0.2;

    /// <summary>Standard deviation of the logarithm of that before the run's own strings are seen.</summary>
    public const double StringRepeatabilityLogSd = 0.3;

    /// <summary>String of an unthickened base in mm: median.</summary>
    public const double StringBaseMedian = 8;

    /// <summary>Standard deviation of its logarithm.</summary>
    public const double StringBaseLogSd = 1.2;

    /// <summary>Rise of ln string over the string thickener's range: mean.</summary>
    public const double StringRiseMean = 2.2;

    /// <summary>Its standard deviation.</summary>
    public const double StringRiseSd = 0.8;

    /// <summary>Rise of ln string over the body thickener's range: mean.</summary>
    public const double StringByBodyMean = 0.2;

    /// <summary>Its standard deviation.</summary>
    public const double StringByBodySd = 0.35;

    /// <summary>How the string's rise bends: above 0 it flattens, below 0 it steepens; mean.</summary>
    public const double BendMean = 0.8;

    /// <summary>Its standard deviation.</summary>
    public const double BendSd = 1.2;

    /// <summary>Half-way dose of a late rise over the range top: median.</summary>
    public const double LateHalfWay = 0.4;

    /// <summary>Standard deviation of its logarithm.</summary>
    public const double LateHalfWayLogSd = 0.35;

    /// <summary>Steepness of a late rise: median.</summary>
    public const double LateSteepness = 2.5;

    /// <summary>Standard deviation of its logarithm.</summary>
    public const double LateSteepnessLogSd = 0.3;

    /// <summary>How often a rise is late before any reading.</summary>
    public const double LateShare = 0.25;

    /// <summary>Median of how far ln string strays over the whole range.</summary>
    public const double StringStrayMedian = 0.1;

    /// <summary>Standard deviation of the logarithm of that.</summary>
    public const double StringStrayLogSd = 0.7;

    /// <summary>A ruler tells a string to so many mm (common practice).</summary>
    public const double RulerMillimeters = 0.5;
}
