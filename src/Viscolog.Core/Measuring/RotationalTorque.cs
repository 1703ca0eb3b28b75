using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>A rotational viscometer's torque to a viscosity: η = factor × torque in % of full scale, the factor that of spindle and speed (the instrument's own definition).</summary>
public static class RotationalTorque
{
    /// <summary>Torque under which a reading is doubtful (common practice), of full scale.</summary>
    public static readonly Percentage Least = Percentage.FromPercent(10);

    /// <summary>Accuracy of the torque scale, of full scale (common practice: 1 %, an even spread either way).</summary>
    private const double ScaleAccuracy = 0.01;

    /// <summary>Turns a torque into a viscosity.</summary>
    /// <param name="torque">Of full scale; above 0.</param>
    /// <param name="perPercent">Viscosity for each per cent; null where it is not known.</param>
    /// <param name="revolutionsPerMinute">Speed in 1/min; null where it is not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">The torque is 0.</exception>
    public static Conversion Convert(Percentage torque, Viscosity? perPercent, double? revolutionsPerMinute)
    {
        Guard.Positive(torque.Percent, nameof(torque));
        if (perPercent is not { } factor)
        {
            return new Conversion.Refused("a torque needs the instrument's factor: mPa·s for each % at this spindle and speed (run file: factor_mpas_per_pct; convert: --factor)");
        }

        if (torque.Percent > 100)
        {
            return new Conversion.Refused(FormattableString.Invariant($"{torque.Percent:0.#} % is beyond full scale; use a lower speed or a smaller spindle"));
        }

        var at = revolutionsPerMinute is { } rpm ? FormattableString.Invariant($" at {rpm:0.###} 1/min") : "";
        return new Conversion.Converted(new(
            $"steady rotation of one spindle{at}; another speed or spindle is another shear condition unless the liquid is Newtonian",
            "the instrument's factor times torque")
        {
            Dynamic = Viscosity.FromMilliPascalSeconds(factor.MilliPascalSeconds * torque.Percent),
            Repeatability = Method.Find("rotational")!.Repeatability,
            ReadingUncertainty = Percentage.FromFraction(ScaleAccuracy / Math.Sqrt(3) / torque.Fraction),
            CalibrationUncertainty = Percentage.FromPercent(1),
            Warnings = Warnings(torque),
            Better = Better(torque),
        });
    }

    private static ImmutableArray<string> Warnings(Percentage torque) => torque < Least
        ? [FormattableString.Invariant($"torque {torque.Percent:0.#} % is under 10 % of full scale: the scale's own error grows to {100 * ScaleAccuracy / torque.Fraction:0} % of the value")]
        : [];

    private static string? Better(Percentage torque) => torque.Percent switch
    {
        < 10 => FormattableString.Invariant($"a higher speed (about {Math.Min(50, 50 / torque.Percent):0.#} times this one for a Newtonian liquid) or a larger spindle would suit better"),
        > 90 => "a lower speed or a smaller spindle would suit better: the reading is near full scale",
        _ => null,
    };
}
