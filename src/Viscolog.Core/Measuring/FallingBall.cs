using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// A ball falling in a jar: Stokes' law (1851) with Faxén's correction for the wall (1922; both from memory),
/// η = (ρ_ball − ρ)·g·d²·f/(18·v), f = 1 − 2.104x + 2.09x³ − 0.95x⁵, x = d/D. Good while Re = ρ·v·d/η is at most 0.1 and x at most 0.3.
/// </summary>
public static class FallingBall
{
    private const double Gravity = 9.80665;
    private const double MostReynolds = 0.1;
    private const double MostWidth = 0.3;
    private const double Stopwatch = 0.2;

    /// <summary>Turns the time of a fall into a viscosity.</summary>
    /// <param name="time">Above 0.</param>
    /// <param name="setup">Ball, distance and jar.</param>
    /// <param name="density">The liquid's; null where it is not known.</param>
    public static Conversion Convert(TimeSpan time, MethodSetup setup, Density? density)
    {
        Guard.Positive(time.TotalSeconds, nameof(time));
        if (setup is not { BallDiameter: { Millimeters: > 0 } diameter, BallDensity: { } ball, Fall.Millimeters: > 0 })
        {
            return Conversions.Missing(MissingPart.Ball);
        }

        if (density is not { } liquid)
        {
            return Conversions.Missing(MissingPart.BallLiquidDensity);
        }

        if (ball <= liquid)
        {
            return new Conversion.Refused(new ConversionRefusal.BallFloats());
        }

        var width = setup.JarDiameter is { Millimeters: > 0 } jar ? diameter.Millimeters / jar.Millimeters : 0;
        return width > MostWidth
            ? new Conversion.Refused(new ConversionRefusal.BallTooWide(Percentage.FromFraction(width)))
            : Fallen(time, setup, liquid, width);
    }

    /// <summary>Faxén's factor for the wall.</summary>
    /// <param name="width">Ball over jar diameter, 0 to 0.3.</param>
    internal static double Wall(double width) => 1 - (2.104 * width) + (2.09 * Math.Pow(width, 3)) - (0.95 * Math.Pow(width, 5));

    private static Conversion Fallen(TimeSpan time, MethodSetup setup, Density density, double width)
    {
        // SI throughout: m, s, kg/m³, Pa·s.
        var d = setup.BallDiameter!.Value.Millimeters / 1000;
        var speed = setup.Fall!.Value.Millimeters / 1000 / time.TotalSeconds;
        var (ball, liquid) = (1000 * setup.BallDensity!.Value.GramsPerMilliliter, 1000 * density.GramsPerMilliliter);
        var viscosity = (ball - liquid) * Gravity * d * d * Wall(width) / (18 * speed);
        var reynolds = liquid * speed * d / viscosity;
        if (reynolds > MostReynolds)
        {
            // The speed goes with d², so Re goes with d³.
            var smaller = 1000 * d * Math.Cbrt(0.5 * MostReynolds / reynolds);
            return new Conversion.Refused(new ConversionRefusal.BallTooFast(reynolds, Length.FromMillimeters(smaller)));
        }

        return new Conversion.Converted(new(ReadingFormula.FallingBall)
        {
            Dynamic = Viscosity.FromMilliPascalSeconds(1000 * viscosity),
            Rate = ShearRate.FromPerSecond(3 * speed / d),
            Repeatability = Method.Find("falling-ball")!.Repeatability,
            ReadingUncertainty = Percentage.FromFraction(Stopwatch / time.TotalSeconds),
            CalibrationUncertainty = Percentage.FromFraction(Calibration(ball, liquid, setup)),
            Warnings = Warnings(time, setup, ball / liquid),
        });
    }

    /// <summary>Ball and distance measured to 0.05 and 1 mm, densities to 0.5 % (common practice).</summary>
    private static double Calibration(double ball, double liquid, MethodSetup setup)
    {
        var size = 2 * 0.05 / setup.BallDiameter!.Value.Millimeters;
        var buoyancy = 0.005 * Math.Sqrt((ball * ball) + (liquid * liquid)) / (ball - liquid);
        var distance = 1 / setup.Fall!.Value.Millimeters;
        return Math.Sqrt((size * size) + (buoyancy * buoyancy) + (distance * distance));
    }

    private static ImmutableArray<ReadingWarning> Warnings(TimeSpan time, MethodSetup setup, double heavier) =>
    [
        .. setup.JarDiameter is null
            ? [new ReadingWarning.NoJar(Percentage.FromFraction((1 / Wall(0.1)) - 1))] : Array.Empty<ReadingWarning>(),
        .. time.TotalSeconds < 5 ? [new ReadingWarning.ShortFall()] : Array.Empty<ReadingWarning>(),
        .. heavier < 1.05 ? [new ReadingWarning.NearlyFloats()] : Array.Empty<ReadingWarning>(),
    ];
}
