using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// The slump of a lifted cylinder to a yield stress: s' = 1 − 2τ'·(1 − ln 2τ'), s' = slump over height, τ' = τ/(ρ·g·H) (Pashias, Boger, Summers and
/// Glenister, J. Rheol. 40 (1996) 1179–1189; formula from memory). For a cylinder about as high as wide that slumps by 0.1 to 0.9 of its height.
/// </summary>
public static class SlumpCylinder
{
    private const double Gravity = 9.80665;
    private const double Least = 0.05;
    private const double Most = 0.95;

    /// <summary>Standard uncertainty of the formula itself (from memory: it agrees with vanes within about 10 %).</summary>
    private const double Formula = 0.1;

    /// <summary>Turns a slump into a yield stress.</summary>
    /// <param name="slump">How far the top came down.</param>
    /// <param name="setup">The cylinder.</param>
    /// <param name="density">The paste's; null where it is not known.</param>
    public static Conversion Convert(Length slump, MethodSetup setup, Density? density)
    {
        if (setup.CylinderHeight is not { Millimeters: > 0 } height)
        {
            return new Conversion.Refused("a slump needs the cylinder's height (run file: cylinder_height_mm; convert: --height)");
        }

        if (density is not { } paste)
        {
            return new Conversion.Refused("a slump needs the paste's density: weigh 100 mL of it (run file: base_density_g_ml; convert: --density)");
        }

        var part = slump.Millimeters / height.Millimeters;
        if (part < Least)
        {
            return new Conversion.Refused(FormattableString.Invariant($"a slump of {slump.Millimeters:0.#} mm is under a twentieth of the height: the paste is too stiff for this cylinder; use a higher one"));
        }

        if (part > Most)
        {
            return new Conversion.Refused(FormattableString.Invariant($"a slump of {slump.Millimeters:0.#} mm leaves hardly a heap: the material is too thin for a slump; use a cup or a ball in a jar"));
        }

        var reduced = Solve(part);
        var pascals = reduced * 1000 * paste.GramsPerMilliliter * Gravity * height.Millimeters / 1000;

        // dτ'/ds' by the inverse of ds'/dτ' = 2 ln 2τ'; the ruler is read to 1 mm.
        var perMillimeter = Math.Abs(1 / (2 * Math.Log(2 * reduced))) / reduced / height.Millimeters;
        return new Conversion.Converted(new(
            "no shear at all: the stress at which it stops flowing under its own weight (a yield stress, no viscosity)",
            "Pashias, Boger, Summers and Glenister, J. Rheol. 40 (1996) 1179; formula from memory")
        {
            YieldStress = Stress.FromPascals(pascals),
            Repeatability = Method.Find("slump")!.Repeatability,
            ReadingUncertainty = Percentage.FromFraction(perMillimeter),
            CalibrationUncertainty = Percentage.FromFraction(Formula),
            Warnings = Warnings(part, height, setup.CylinderDiameter),
        });
    }

    /// <summary>τ' for a slump: the formula falls from 1 at τ' = 0 to 0 at τ' = 1/2, so halving finds it.</summary>
    /// <param name="part">Slump over height, between 0 and 1.</param>
    internal static double Solve(double part)
    {
        var (low, high) = (0.0, 0.5);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = 1 - (2 * middle * (1 - Math.Log(2 * middle))) > part ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static ImmutableArray<string> Warnings(double part, Length height, Length? diameter)
    {
        string?[] all =
        [
            part < 0.1 ? "a slump under a tenth of the height tells little; use a higher cylinder" : null,
            part > 0.85 ? "a slump above 0.85 of the height tells little; use a ball in a jar" : null,
            diameter is { } d && (height.Millimeters / d.Millimeters is < 0.75 or > 1.35) ? "the formula is for a cylinder about as high as wide" : null,
        ];
        return [.. all.OfType<string>()];
    }
}
