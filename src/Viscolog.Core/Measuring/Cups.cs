using System.Collections.Frozen;
using System.Globalization;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// Every cup with its equation and time limits. ISO 2431: ν = a·t − b/t, 30 to 100 s (coefficients from memory; the end points that cup
/// tables print agree to 1.5 %, those of the 5 mm cup were not found). ASTM D1200: ν = a·(t − t₀) (published tables; limits as in
/// D1200-94(2005), section 11.2). Dip cups: ν = a·(t − t₀) (a maker's published table for ASTM D4212 cups).
/// </summary>
public static class Cups
{
    private const double StopwatchSeconds = 0.2;

    /// <summary>How far a cup's times may be off, of the time (from memory: cups of ISO 2431 are good to 3 %).</summary>
    private const double Calibration = 0.03;

    /// <summary>
    /// The same of the 44 mL dip cups: times scatter by 11.5 % between laboratories and by 3.7 % within one (ASTM D4212, 13.1.1); what is
    /// left between them is the cup.
    /// </summary>
    private const double DipCalibration = 0.109;

    /// <summary>How much nearer to the middle of its limits (in ln time) another cup must lie to be worth a word.</summary>
    private const double WorthChanging = 0.25;

    /// <summary>Every cup.</summary>
    public static IReadOnlyList<CupEquation> All { get; } =
    [
        Iso(3, 0.443, 200), Iso(4, 1.37, 200), Iso(5, 3.28, 220) with { IsChecked = false }, Iso(6, 6.9, 570),
        D1200("1", 0.49, 35, 55), D1200("2", 1.44, 18, 40), D1200("3", 2.31, 6.58, 20), D1200("4", 3.85, 4.49, 20), D1200("5", 12.1, 2, 20),
        Dip(44, "1", 1.1, 29, 35), Dip(44, "2", 3.5, 14), Dip(44, "3", 11.7, 7.5), Dip(44, "4", 14.8, 5), Dip(44, "5", 23, 0),
        Dip(23, "1", 0.226, 13), Dip(23, "2", 0.576, 5), Dip(23, "2.5", 0.925, 3), Dip(23, "3", 1.51, 2),
        Dip(23, "3.5", 2.17, 1.5), Dip(23, "4", 3.45, 1), Dip(23, "5", 6.5, 1), Dip(23, "6", 16.2, 0.5),
    ];

    private static FrozenDictionary<string, CupEquation> ById { get; } = All.ToFrozenDictionary(c => c.Id, StringComparer.Ordinal);

    /// <summary>The cup of a method; null where the method is no cup.</summary>
    public static CupEquation? Find(Method method) => ById.GetValueOrDefault(method.Id);

    /// <summary>The cup that suits a liquid best: of the set where one does, else of any set; null where none does.</summary>
    /// <param name="viscosity">The liquid's.</param>
    /// <param name="series">The set to look in first.</param>
    public static CupEquation? Fitting(KinematicViscosity viscosity, CupSeries series)
    {
        var fitting = All.Where(c => c.Allows(c.TimeFor(viscosity))).OrderBy(c => c.OffMiddle(c.TimeFor(viscosity))).ToArray();
        return fitting.FirstOrDefault(c => c.Series == series) ?? fitting.FirstOrDefault();
    }

    /// <summary>Turns a time into a kinematic viscosity, and with a density into a dynamic one.</summary>
    /// <param name="method">A cup's method.</param>
    /// <param name="time">Above 0.</param>
    /// <param name="density">The liquid's; null where it is not known.</param>
    /// <exception cref="ArgumentException">The method is no cup.</exception>
    public static Conversion Convert(Method method, TimeSpan time, Density? density)
    {
        var cup = Find(method) ?? throw new ArgumentException("is no cup", nameof(method));
        if (!cup.Allows(time) || cup.At(time) is not { } kinematic)
        {
            return new Conversion.Refused(Outside(cup, time));
        }

        return new Conversion.Converted(new(ReadingFormula.Cup)
        {
            Cup = cup,
            Kinematic = kinematic,
            Dynamic = density is { } d
                ? Viscosity.FromMilliPascalSeconds(kinematic.SquareMillimetersPerSecond * d.GramsPerMilliliter) : null,
            Rate = Rate(cup, time),
            Repeatability = method.RepeatabilityAt(new InstrumentValue.CupTime(time)),
            ReadingUncertainty = Percentage.FromFraction(StopwatchSeconds / time.TotalSeconds * cup.LnSlope(time)),
            CalibrationUncertainty = Percentage.FromFraction(
                (cup.Series == CupSeries.Dip44 ? DipCalibration : Calibration) * cup.LnSlope(time)),
            Better = Better(cup, time, kinematic),
        });
    }

    private static ConversionRefusal.OutsideCup Outside(CupEquation cup, TimeSpan time)
    {
        if (cup.At(time) is { } about && Fitting(about, cup.Series) is { } next)
        {
            return new(cup, time, next, next.TimeFor(about));
        }

        // The equation tells nothing so far out; all that is known is the direction.
        var finest = All.Where(c => c.Series == cup.Series).MinBy(c => c.At(c.Most)!.Value)!;
        return new(cup, time, time > cup.Most || finest == cup ? null : finest, null);
    }

    private static BetterChoice.AnotherCup? Better(CupEquation cup, TimeSpan time, KinematicViscosity kinematic)
        => Fitting(kinematic, cup.Series) is { } other && other != cup && other.Series == cup.Series
            && other.OffMiddle(other.TimeFor(kinematic)) + WorthChanging < cup.OffMiddle(time)
            ? new(other, other.TimeFor(kinematic)) : null;

    /// <summary>Mean rate at the orifice's wall, 4Q/(πr³), Q the cup's 100 mL (ISO 2431) over the time.</summary>
    private static ShearRate? Rate(CupEquation cup, TimeSpan time) => cup.OrificeRadius is { } r
        ? ShearRate.FromPerSecond(4 * 100e3 / time.TotalSeconds / (Math.PI * r * r * r))
        : null;

    private static CupEquation Iso(int number, double a, double b) => new(
        Invariant($"iso-2431-{number}"), Invariant($"{number}"), CupSeries.Iso2431, (a, 0, b), (30, 100))
    { OrificeRadius = number / 2.0 };

    private static CupEquation D1200(string number, double a, double t0, double least)
        => new($"d1200-{number}", number, CupSeries.D1200, (a, t0, 0), (least, 100));

    private static CupEquation Dip(int milliliters, string number, double a, double t0, double least = 20) => new(
        Invariant($"d4212-{milliliters}ml-{number}"),
        number,
        milliliters == 44 ? CupSeries.Dip44 : CupSeries.Dip23,
        (a, t0, 0),
        (least, 80));

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>The sets of cups of one standard and size.</summary>
public enum CupSeries
{
    /// <summary>Flow cups of ISO 2431.</summary>
    Iso2431,

    /// <summary>Efflux cups of ASTM D1200.</summary>
    D1200,

    /// <summary>Dip cups of 44 mL (ASTM D4212).</summary>
    Dip44,

    /// <summary>Dip cups of 23 mL with a capillary (ASTM D4212).</summary>
    Dip23,
}
