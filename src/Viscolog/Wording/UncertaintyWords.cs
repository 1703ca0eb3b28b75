using Viscolog.Core.Checking;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>The parts of a batch's uncertainty in words.</summary>
internal static class UncertaintyWords
{
    /// <summary>What a part comes from, in a word or two, as scripts know it.</summary>
    public static string Name(UncertaintyPart part) => part switch
    {
        UncertaintyPart.Repeatability => Say("repeatability"),
        UncertaintyPart.ReadingOff => Say("reading off"),
        UncertaintyPart.Calibration => Say("calibration"),
        UncertaintyPart.OfTemperature => Say("temperature"),
        UncertaintyPart.UnreadDegrees => Say("unread degrees"),
        UncertaintyPart.BuildUp => Say("build-up"),
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "not a case of the closed set"),
    };

    /// <summary>The same where there is room for 14 letters.</summary>
    public static string Brief(UncertaintyPart part) => part switch
    {
        UncertaintyPart.Repeatability => Say("repeatability", "brief"),
        UncertaintyPart.UnreadDegrees => Say("unread degrees", "brief"),
        _ => Name(part),
    };

    /// <summary>How a part was worked out.</summary>
    public static string Of(UncertaintyPart part) => part switch
    {
        UncertaintyPart.Repeatability known => Say($"{known.Scatter.Percent:0.0} % a reading with "
            + $"{Freedom(known.DegreesOfFreedom)}, {Origin(known)}"),
        UncertaintyPart.ReadingOff => Say("stopwatch, scale or ruler, separately for each reading"),
        UncertaintyPart.Calibration calibration => Calibration(calibration),
        UncertaintyPart.OfTemperature { IsRead: true } read => Say($"thermometer "
            + $"{UncertaintyPart.OfTemperature.Thermometer} °C, correction by {EvidenceWords.Of(read.Coefficient)}"),
        UncertaintyPart.OfTemperature => Say("no temperature was read"),
        UncertaintyPart.UnreadDegrees => Say("anywhere within 2 °C of the reference"),
        UncertaintyPart.BuildUp => Say("what may still build up"),
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "not a case of the closed set"),
    };

    /// <summary>What makes a part smaller.</summary>
    /// <param name="part">The part.</param>
    /// <param name="reference">The reference temperature.</param>
    public static string Remedy(UncertaintyPart part, Temperature reference) => part switch
    {
        UncertaintyPart.Repeatability { Origin: ScatterOrigin.Default } => Say("give the method's repeatability, from repeats of your own"),
        UncertaintyPart.Repeatability or UncertaintyPart.ReadingOff => Say("read it more often"),
        UncertaintyPart.Calibration => Say("check the method with a certified oil, several readings"),
        UncertaintyPart.OfTemperature => Say($"bring the pot to {Degrees(reference)} and read it there"),
        UncertaintyPart.UnreadDegrees => Say($"read the temperature, and bring the pot to {Degrees(reference)} and read it there"),
        UncertaintyPart.BuildUp => Say("let it stand longer before it is read"),
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "not a case of the closed set"),
    };

    /// <summary>Degrees of freedom, as they stand after "with".</summary>
    public static string Freedom(double freedom) => freedom > CheckWords.MostFreedom ? Say("many degrees of freedom")
        : Math.Abs(freedom - 1) < 0.05 ? Say($"{freedom:0.#} degree of freedom") : Say($"{freedom:0.#} degrees of freedom");

    private static string Origin(UncertaintyPart.Repeatability known) => (known.Origin, known.Readings) switch
    {
        (ScatterOrigin.Own, var these) => Say($"that of these {these} readings alone, which scatter more than the method does"),
        (ScatterOrigin.Stated, 1) => Say("as given"),
        (ScatterOrigin.Stated, var these) => Say($"from the repeatability given and these {these} readings"),
        (ScatterOrigin.Repeats, 1) => Say($"from {known.Earlier:0} earlier repeats and the method's default"),
        (ScatterOrigin.Repeats, var these)
            => Say($"from {known.Earlier:0} earlier repeats, these {these} readings and the method's default"),
        (_, 1) => Say("2.5 times the method's default, since one reading shows no scatter"),
        (_, var these) => Say($"from these {these} readings and the method's default"),
    };

    private static string Calibration(UncertaintyPart.Calibration calibration)
    {
        if (calibration.Drift is not { } drift)
        {
            return calibration.HasFormula
                ? Say("the formula's own; never checked with a certified oil") : Say("taken as exact; never checked with a certified oil");
        }

        var bias = string.Create(Numbers, $"{Math.Abs(100 * double.ExpM1(drift.LnBias)):0.0} %");
        var taken = !drift.IsBiased ? Say($"certified oil: a bias of {bias}, not significant, included as uncertainty")
            : drift.LnBias > 0 ? Say($"certified oil: {bias} too high, corrected for; its uncertainty is included")
            : Say($"certified oil: {bias} too low, corrected for; its uncertainty is included");
        return calibration.IsOverdue
            ? Say($"{taken}; the check is overdue, so the formula's own uncertainty is included too") : taken;
    }

    private static string Degrees(Temperature reference) => string.Create(Numbers, $"{reference.Celsius:0.#} °C");
}
