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
    private const string Need = "a falling ball needs";

    /// <summary>Turns the time of a fall into a viscosity.</summary>
    /// <param name="time">Above 0.</param>
    /// <param name="setup">Ball, distance and jar.</param>
    /// <param name="density">The liquid's; null where it is not known.</param>
    public static Conversion Convert(TimeSpan time, MethodSetup setup, Density? density)
    {
        Guard.Positive(time.TotalSeconds, nameof(time));
        if (setup.BallDiameter is not { Millimeters: > 0 } diameter || setup.BallDensity is not { } ball || setup.Fall is not { Millimeters: > 0 } fall)
        {
            return new Conversion.Refused($"{Need} its diameter and density and the distance that is timed (run file: ball_diameter_mm, ball_density_g_ml, fall_mm; convert: --ball, --ball-density, --fall)");
        }

        if (density is not { } liquid)
        {
            return new Conversion.Refused($"{Need} the liquid's density: weigh 100 mL of it (run file: base_density_g_ml; convert: --density)");
        }

        if (ball <= liquid)
        {
            return new Conversion.Refused("the ball is not denser than the liquid and can't sink in it; use a denser ball");
        }

        var width = setup.JarDiameter is { Millimeters: > 0 } jar ? diameter.Millimeters / jar.Millimeters : 0;
        return width > MostWidth
            ? new Conversion.Refused(FormattableString.Invariant($"the ball is {100 * width:0} % as wide as the jar; the wall's pull is only known up to 30 %: use a wider jar or a smaller ball"))
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
            return new Conversion.Refused(FormattableString.Invariant(
                $"the ball falls too fast for Stokes' law: Re = {reynolds:0.##}, at most 0.1; use a ball of about {smaller:0.##} mm or a lighter one, or an efflux cup"));
        }

        var rate = 3 * speed / d;
        return new Conversion.Converted(new(
            FormattableString.Invariant($"a ball creeping through the liquid: at most {rate:0.###} 1/s at its waist, nearly at rest; a liquid that thins under shear reads thicker than in a cup"),
            "Stokes (1851) with Faxén's wall correction (1922), from memory")
        {
            Dynamic = Viscosity.FromMilliPascalSeconds(1000 * viscosity),
            Rate = ShearRate.FromPerSecond(rate),
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

    private static ImmutableArray<string> Warnings(TimeSpan time, MethodSetup setup, double heavier)
    {
        string?[] all =
        [
            setup.JarDiameter is null ? "no jar diameter: the wall is left out, and the viscosity comes out too high (by a fifth in a jar of ten balls' width)" : null,
            time.TotalSeconds < 5 ? "a fall of under 5 s is hard to time by hand; use a longer way or a smaller ball" : null,
            heavier < 1.05 ? "ball and liquid are nearly equal in density: a small error in either shifts the value a lot; use a denser ball" : null,
        ];
        return [.. all.OfType<string>()];
    }
}
