using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// A rotational viscometer's torque to a viscosity: η = factor × torque in % of full scale, the factor that of spindle and speed (the
/// instrument's own definition).
/// </summary>
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
            return Conversions.Missing(MissingPart.TorqueFactor);
        }

        if (torque.Percent > 100)
        {
            return new Conversion.Refused(new ConversionRefusal.BeyondFullScale(torque));
        }

        return new Conversion.Converted(new(ReadingFormula.Torque)
        {
            RevolutionsPerMinute = revolutionsPerMinute,
            Dynamic = Viscosity.FromMilliPascalSeconds(factor.MilliPascalSeconds * torque.Percent),
            Repeatability = Method.Find("rotational")!.Repeatability,
            ReadingUncertainty = Percentage.FromFraction(ScaleAccuracy / Math.Sqrt(3) / torque.Fraction),
            CalibrationUncertainty = Percentage.FromPercent(1),
            Warnings = torque < Least
                ? [new ReadingWarning.LowTorque(torque, Percentage.FromFraction(ScaleAccuracy / torque.Fraction))] : [],
            Better = torque.Percent switch
            {
                < 10 => new BetterChoice.Faster(Math.Min(50, 50 / torque.Percent)),
                > 90 => new BetterChoice.Slower(),
                _ => null,
            },
        });
    }
}
