using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// The slump of a lifted cylinder to a yield stress: s' = 1 − 2τ'·(1 − ln 2τ'), s' = slump over height, τ' = τ/(ρ·g·H) (Pashias, Boger,
/// Summers and Glenister, J. Rheol. 40 (1996) 1179–1189; formula from memory). For a cylinder about as high as wide that slumps by 0.1 to
/// 0.9 of its height.
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
            return Conversions.Missing(MissingPart.CylinderHeight);
        }

        if (density is not { } paste)
        {
            return Conversions.Missing(MissingPart.PasteDensity);
        }

        var part = slump.Millimeters / height.Millimeters;
        if (part < Least)
        {
            return new Conversion.Refused(new ConversionRefusal.SlumpTooSmall(slump));
        }

        if (part > Most)
        {
            return new Conversion.Refused(new ConversionRefusal.SlumpTooLarge(slump));
        }

        var reduced = Solve(part);
        var pascals = reduced * 1000 * paste.GramsPerMilliliter * Gravity * height.Millimeters / 1000;

        // dτ'/ds' by the inverse of ds'/dτ' = 2 ln 2τ'; the ruler is read to 1 mm.
        var perMillimeter = Math.Abs(1 / (2 * Math.Log(2 * reduced))) / reduced / height.Millimeters;
        return new Conversion.Converted(new(ReadingFormula.Slump)
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

    private static ImmutableArray<ReadingWarning> Warnings(double part, Length height, Length? diameter) =>
    [
        .. part < 0.1 ? [new ReadingWarning.SmallSlump()] : Array.Empty<ReadingWarning>(),
        .. part > 0.85 ? [new ReadingWarning.LargeSlump()] : Array.Empty<ReadingWarning>(),
        .. diameter is { } d && height.Millimeters / d.Millimeters is < 0.75 or > 1.35
            ? [new ReadingWarning.OddCylinder()] : Array.Empty<ReadingWarning>(),
    ];
}
