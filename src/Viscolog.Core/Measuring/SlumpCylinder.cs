using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// The slump of a lifted cylinder to a yield stress: s' = 1 − 2τ'·(1 − ln 2τ'), s' = slump over height, τ' = τ/(ρ·g·H) (Pashias, Boger,
/// Summers and Glenister, J. Rheol. 40 (1996) 1179–1189; formula from memory). For a cylinder about as high as wide: 0.83 to 1.15 is the
/// more reliable shape (Appl. Rheol. 25:2 (2015) 23416, abstract). At small slumps it runs low: it lets a paste stand once its yield stress
/// is ρ·g·H/2, the greatest shear stress (Tresca), where one that yields by von Mises' criterion needs ρ·g·H/√3, 15 % more; the
/// discrepancy at high yield stresses is that of Roussel and Coussot, J. Rheol. 49 (2005) 705.
/// </summary>
public static class SlumpCylinder
{
    private const double Gravity = 9.80665;
    private const double Least = 0.05;
    private const double Most = 0.95;

    /// <summary>Standard uncertainty of the formula itself (from memory: it agrees with vanes within about 10 %).</summary>
    private const double Formula = 0.1;

    /// <summary>Slump over height under which the formula is taken to run low (a rule of this project).</summary>
    private const double Small = 0.2;

    /// <summary>How low it may run there: von Mises' criterion over Tresca's, 2/√3.</summary>
    private static readonly double RunsLow = (2 / Math.Sqrt(3)) - 1;

    private const double LeastShape = 0.8;
    private const double MostShape = 1.2;

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
            CalibrationUncertainty = Percentage.FromFraction(
                part < Small ? Math.Sqrt((Formula * Formula) + (RunsLow * RunsLow)) : Formula),
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

    private static ImmutableArray<ReadingWarning> Warnings(double part, Length height, Length? diameter)
    {
        var shape = height.Millimeters / (diameter ?? height).Millimeters;
        return
        [
            .. part < Small ? [new ReadingWarning.SmallSlump()] : Array.Empty<ReadingWarning>(),
            .. part > 0.85 ? [new ReadingWarning.LargeSlump()] : Array.Empty<ReadingWarning>(),
            .. shape is < LeastShape or > MostShape ? [new ReadingWarning.OddCylinder(shape)] : Array.Empty<ReadingWarning>(),
        ];
    }
}
