using System.Globalization;
using Viscolog.Core.Checking;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>The parts of a batch's uncertainty in words.</summary>
internal static class UncertaintyWords
{
    /// <summary>What a part comes from, in a word or two, as scripts know it.</summary>
    public static string Name(UncertaintyPart part) => part switch
    {
        UncertaintyPart.Repeatability => "repeatability",
        UncertaintyPart.ReadingOff => "reading off",
        UncertaintyPart.Calibration => "calibration",
        UncertaintyPart.OfTemperature => "temperature",
        UncertaintyPart.UnreadDegrees => "unread degrees",
        UncertaintyPart.BuildUp => "build-up",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "not a case of the closed set"),
    };

    /// <summary>How a part was worked out.</summary>
    public static string Of(UncertaintyPart part) => part switch
    {
        UncertaintyPart.Repeatability known => string.Create(CultureInfo.InvariantCulture, $"{known.Scatter.Percent:0.0} % a reading with "
            + $"{Freedom(known.DegreesOfFreedom)}, {Origin(known)}"),
        UncertaintyPart.ReadingOff => "stopwatch, scale or ruler, separately for each reading",
        UncertaintyPart.Calibration calibration => Calibration(calibration),
        UncertaintyPart.OfTemperature { IsRead: true } read => string.Create(CultureInfo.InvariantCulture, $"thermometer "
            + $"{UncertaintyPart.OfTemperature.Thermometer} °C, correction by {EvidenceWords.Of(read.Coefficient)}"),
        UncertaintyPart.OfTemperature => "no temperature was read",
        UncertaintyPart.UnreadDegrees => "anywhere within 2 °C of the reference",
        UncertaintyPart.BuildUp => "what may still build up",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "not a case of the closed set"),
    };

    /// <summary>What makes a part smaller.</summary>
    /// <param name="part">The part.</param>
    /// <param name="reference">The reference temperature.</param>
    public static string Remedy(UncertaintyPart part, Temperature reference) => part switch
    {
        UncertaintyPart.Repeatability { Origin: ScatterOrigin.Default } => "give the method's repeatability, from repeats of your own",
        UncertaintyPart.Repeatability or UncertaintyPart.ReadingOff => "read it more often",
        UncertaintyPart.Calibration => "check the method with a certified oil, several readings",
        UncertaintyPart.OfTemperature => $"bring the pot to {Degrees(reference)} and read it there",
        UncertaintyPart.UnreadDegrees => $"read the temperature, and bring the pot to {Degrees(reference)} and read it there",
        UncertaintyPart.BuildUp => "let it stand longer before it is read",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "not a case of the closed set"),
    };

    /// <summary>Degrees of freedom.</summary>
    public static string Freedom(double freedom) => freedom > CheckWords.MostFreedom ? "many degrees of freedom" : string.Create(
        CultureInfo.InvariantCulture, $"{freedom:0.#} {(Math.Abs(freedom - 1) < 0.05 ? "degree" : "degrees")} of freedom");

    private static string Origin(UncertaintyPart.Repeatability known)
    {
        var these = known.Readings == 1 ? null : FormattableString.Invariant($"these {known.Readings} readings");
        return known.Origin switch
        {
            ScatterOrigin.Own => $"that of {these} alone, which scatter more than the method does",
            ScatterOrigin.Stated => these is null ? "as given" : $"from the repeatability given and {these}",
            ScatterOrigin.Repeats => string.Create(CultureInfo.InvariantCulture, $"from {known.Earlier:0} earlier repeats"
                + $"{(these is null ? "" : ", " + these)} and the method's default"),
            _ => these is null
                ? "2.5 times the method's default, since one reading shows no scatter" : $"from {these} and the method's default",
        };
    }

    private static string Calibration(UncertaintyPart.Calibration calibration)
    {
        if (calibration.Drift is not { } drift)
        {
            return (calibration.HasFormula ? "the formula's own" : "taken as exact") + "; never checked with a certified oil";
        }

        var bias = FormattableString.Invariant($"{Math.Abs(100 * double.ExpM1(drift.LnBias)):0.0} %");
        var taken = drift.IsBiased
            ? $"certified oil: {bias} too {(drift.LnBias > 0 ? "high" : "low")}, corrected for; its uncertainty is included"
            : $"certified oil: a bias of {bias}, not significant, included as uncertainty";
        return calibration.IsOverdue ? taken + "; the check is overdue, so the formula's own uncertainty is included too" : taken;
    }

    private static string Degrees(Temperature reference) => FormattableString.Invariant($"{reference.Celsius:0.#} °C");
}
