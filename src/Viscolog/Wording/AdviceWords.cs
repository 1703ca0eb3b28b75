using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>Advice in words, the same on the screen and in print.</summary>
internal static class AdviceWords
{
    /// <summary>What to do, in one line or two.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="gap">What stands between the action and the doses that it leads between.</param>
    public static IEnumerable<string> Headline(Advice advice, string gap = "   ") => advice.Action switch
    {
        BenchAction.Add add =>
        [
            Say($"ADD {Shown.Grams(add.Poured)} {advice.Thickener.Name}{gap}(dose {Shown.Dose(advice.Thickener.DoseNow)} → "
                + $"{Shown.Dose(add.After)})"),
            Say($"Stir it in well, let it stand {Shown.Duration(add.Standing)}, then {Readings(advice)}."),
        ],
        BenchAction.Wait wait => [Say($"WAIT {Shown.Duration(wait.More)} more, then read again. Add nothing yet.")],
        BenchAction.Stop when advice.Quantities.Length == 1 => [Say("STOP. The pot is in band. Add nothing more.")],
        BenchAction.Stop => [Say("STOP. Body and string are in band. Add nothing more.")],
        BenchAction.LetDown letDown =>
        [
            Say($"LET DOWN with {Shown.Grams(letDown.Base)} of base{gap}(dose {Shown.Dose(advice.Thickener.DoseNow)} → "
                + $"{Shown.Dose(letDown.After)})"),
            Say($"Stir it in well, then {Readings(advice)}."),
        ],
        BenchAction.GiveUp giveUp => [Say($"STOP ADDING. {ReasonWords.Of(giveUp.Remedy)}")],
        BenchAction.Measure { IsOfString: true } => [Say("DRAW A STRING from the pot. Add nothing yet.")],
        BenchAction.Measure { Standing: { } standing }
            => [Say($"READ the pot once it has stood {Shown.Duration(standing)}. Add nothing yet.")],
        BenchAction.Measure => [Say("READ the pot. Add nothing yet.")],
        var other => throw new ArgumentOutOfRangeException(nameof(advice), other, "not a case of the closed set"),
    };

    /// <summary>Why there is no advice, and what to do.</summary>
    public static string Refusal(StudyOutcome outcome) => outcome switch
    {
        StudyOutcome.Refused refused => EvidenceWords.Of(refused.Reason),
        StudyOutcome.Made { Study.NoAdvice: { } why } => Why(why),
        _ => "",
    };

    /// <summary>Why there is no advice, and what to do.</summary>
    public static string Why(NoAdvice missing) => missing switch
    {
        NoAdvice.NoTarget => Say("the run has no target: add '# target_mpas: VALUE' to it, or use --target"),
        NoAdvice.NoStringTarget { Thickeners: [var first, var second] }
            => Say($"the pot contains both '{first}' and '{second}', and one curve can't describe both: give target_string_mm for advice "
                + $"on body and string together, or use one thickener per run"),
        NoAdvice.TooFarToForecast far => Say($"what-if: {far.Poured.Grams:0.###} g would bring the dose to {far.After.Percent:0.##} %; "
            + $"beyond {far.Most.Percent:0.##} %, one and a half times the usual range, there is no forecast"),
        _ => throw new ArgumentOutOfRangeException(nameof(missing), missing, "not a case of the closed set"),
    };

    /// <summary>What a quantity is called.</summary>
    public static string Name(AdvisedQuantity quantity) => Of(quantity, _ => Say("body"), _ => Say("string"));

    /// <summary>Its value now with its interval; null before any reading.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="isBrief">Whether the body goes without its unit.</param>
    public static string? Now(AdvisedQuantity quantity, bool isBrief = false)
        => Of(quantity, b => Interval(b.Now, isBrief), s => Interval(s.Now));

    /// <summary>The value that the action leads to with its interval; null where the action leaves the pot as it is.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="isBrief">Whether the body goes without its unit.</param>
    public static string? Expected(AdvisedQuantity quantity, bool isBrief = false)
        => Of(quantity, b => Interval(b.Expected, isBrief), s => Interval(s.Expected));

    /// <summary>All bands in words.</summary>
    public static string Bands(Advice advice)
        => string.Join(", ", advice.Quantities.Select(q => Of(q, b => Band(b.Band), s => Say($"string {Band(s.Band)}"))));

    /// <summary>The chances that the quantities are in band; each is named where there are several.</summary>
    public static string InBand(Advice advice) => advice.Quantities is [var only]
        ? Shown.Chance(only.ChanceInBand)
        : Say($"both {Shown.Chance(advice.ChanceAllInBand)}; ")
            + string.Join(", ", advice.Quantities.Select(q => $"{Name(q)} {Shown.Chance(q.ChanceInBand)}"));

    /// <summary>The chances that the quantities are over, likewise.</summary>
    public static string Over(Advice advice) => advice.Quantities is [var only]
        ? Over(only)
        : string.Join(", ", advice.Quantities.Select(q => $"{Name(q)} {Over(q)}"));

    /// <summary>
    /// What is still to come, in words: about so much of one thickener, then so much of the other; null where nothing is.
    /// </summary>
    public static string? Plan(Advice advice)
    {
        string[] parts = [.. advice.Thickeners.Where(t => t.Planned is not null).Select(t => Part(t.Name, t.Planned!))];
        return parts.Length == 0 ? null : Say($"about {string.Join(Say(", then "), parts)}");
    }

    /// <summary>The lengths of a string band in words.</summary>
    public static string Band(Core.Pots.StringBand band)
        => Say($"{band.Low.Millimeters:0.##} to {band.High.Millimeters:0.##} mm");

    /// <summary>The band in words.</summary>
    public static string Band(ViscosityBand band)
    {
        var below = 1 - (band.Low.MilliPascalSeconds / band.Aim.MilliPascalSeconds);
        var above = (band.High.MilliPascalSeconds / band.Aim.MilliPascalSeconds) - 1;
        return Math.Abs(above - below) < 1e-9
            ? $"{Shown.Stated(band.Aim)} ±{(100 * above).ToString("0.#", Numbers)} %"
            : $"{Shown.Edges(band)} mPa·s";
    }

    private static string Readings(Advice advice)
        => string.Join(Say(" and "), advice.Quantities.Select(q => Of(q, _ => Say("read", "do"), _ => Say("draw a string"))));

    private static string Over(AdvisedQuantity quantity)
        => $"{Shown.Chance(quantity.ChanceOver)} ({ReasonWords.OneIn(quantity.ChanceOver)})";

    private static string? Interval(Estimate? body, bool isBrief) => body is null
        ? null : $"{(isBrief ? Shown.Number(body.Median.MilliPascalSeconds) : Shown.Body(body.Median))} ({Shown.Spread(body)})";

    private static string? Interval(LengthEstimate? length)
        => length is null ? null : $"{Shown.Length(length.Median)} ({Shown.Spread(length)})";

    private static string Part(string thickener, PlannedDose planned) => planned.Additions == 1
        ? string.Create(Numbers, $"{planned.About.Percent:0.0#} % {thickener}")
        : Say($"{planned.About.Percent:0.0#} % {thickener} in {planned.Additions} additions");

    private static T Of<T>(AdvisedQuantity quantity, Func<AdvisedQuantity.OfBody, T> body, Func<AdvisedQuantity.OfString, T> strings)
        => quantity switch
        {
            AdvisedQuantity.OfBody b => body(b),
            AdvisedQuantity.OfString s => strings(s),
            _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "not a case of the closed set"),
        };
}
