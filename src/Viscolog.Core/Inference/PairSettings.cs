using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>
/// The numbers behind the posterior of two thickeners; one place, version 2. All from memory and set on tuning pots; doses are over the top
/// of
/// each thickener's usual range, values in ln units.
/// </summary>
internal static class PairSettings
{
    /// <summary>Fewer draws than for one thickener, as level and coefficients are not drawn but integrated out.</summary>
    public static SamplingEffort Effort { get; } = SamplingEffort.Full with { FirstDraws = 1200, LaterDraws = 600 };

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

    /// <summary>
    /// Variance of the discrepancy along the string thickener's dose beyond that along the body thickener's, over the whole range.
    /// </summary>
    public const double DiscrepancyAlongString = 0.02;

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

    /// <summary>Median of how far ln string strays over the whole range.</summary>
    public const double StringDiscrepancyMedian = 0.1;

    /// <summary>Standard deviation of the logarithm of that.</summary>
    public const double StringDiscrepancyLogSd = 0.7;
}
