using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>One part of the uncertainty of a batch's value. The set of cases is closed.</summary>
public abstract record UncertaintyPart
{
    private protected UncertaintyPart(Percentage size) => Size = size;

    /// <summary>Relative standard uncertainty.</summary>
    public Percentage Size { get; init; }

    /// <summary>Whether more readings make it smaller.</summary>
    public bool ShrinksWithReadings => this is Repeatability or ReadingOff;

    /// <summary>How surely its size is known: degrees of freedom, above 0; infinite where it is taken as known.</summary>
    public double DegreesOfFreedom { get; init; } = double.PositiveInfinity;

    /// <summary>How readings of the same pot scatter.</summary>
    /// <param name="Size">Relative standard uncertainty.</param>
    /// <param name="Scatter">That of one reading.</param>
    /// <param name="Readings">Readings that count; 1 or more.</param>
    /// <param name="Origin">Where the scatter comes from.</param>
    public sealed record Repeatability(Percentage Size, Percentage Scatter, int Readings, ScatterOrigin Origin) : UncertaintyPart(Size)
    {
        /// <summary>Degrees of freedom of repeats before these readings; 0 where there are none.</summary>
        public double Earlier { get; init; }
    }

    /// <summary>Stopwatch, scale or ruler, each reading its own.</summary>
    /// <param name="Size">Relative standard uncertainty.</param>
    public sealed record ReadingOff(Percentage Size) : UncertaintyPart(Size);

    /// <summary>The instrument.</summary>
    /// <param name="Size">Relative standard uncertainty.</param>
    /// <param name="Drift">The last check with a certified oil; null where there was none.</param>
    /// <param name="HasFormula">Whether the method's own formula leaves something open.</param>
    /// <param name="IsOverdue">Whether the check is too old, so that the formula counts beside it.</param>
    public sealed record Calibration(Percentage Size, MethodDrift? Drift, bool HasFormula, bool IsOverdue) : UncertaintyPart(Size);

    /// <summary>The thermometer, and the way to the reference temperature.</summary>
    /// <param name="Size">Relative standard uncertainty.</param>
    /// <param name="IsRead">Whether any temperature was read.</param>
    /// <param name="Coefficient">By what readings are brought to the reference temperature.</param>
    public sealed record OfTemperature(Percentage Size, bool IsRead, CoefficientInUse Coefficient) : UncertaintyPart(Size)
    {
        /// <summary>Standard uncertainty of a bench thermometer in °C, shared by all readings (from memory).</summary>
        public const double Thermometer = 0.2;
    }

    /// <summary>Readings whose temperature nobody read: anywhere within 2 °C of the reference.</summary>
    /// <param name="Size">Relative standard uncertainty.</param>
    public sealed record UnreadDegrees(Percentage Size) : UncertaintyPart(Size);

    /// <summary>What may still be to come.</summary>
    /// <param name="Size">Relative standard uncertainty.</param>
    public sealed record BuildUp(Percentage Size) : UncertaintyPart(Size);
}

/// <summary>Where the scatter of a batch's readings comes from.</summary>
public enum ScatterOrigin
{
    /// <summary>What is stated, and these readings.</summary>
    Stated,

    /// <summary>Earlier repeats, the method's default and these readings.</summary>
    Repeats,

    /// <summary>The method's default and these readings.</summary>
    Default,

    /// <summary>These readings alone, which scatter more than was known.</summary>
    Own,
}
