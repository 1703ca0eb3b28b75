using Viscolog.Core.Advising;
using Viscolog.Core.Checking;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>A check in words, the same on the screen and in print.</summary>
internal static class CheckWords
{
    /// <summary>Beyond so many degrees of freedom Student's t is the normal law for a reader.</summary>
    public const double MostFreedom = 100;

    /// <summary>The verdict, one line.</summary>
    public static string Headline(Verdict verdict) => verdict switch
    {
        Verdict.Accept => Say("ACCEPT. It meets the specification."),
        Verdict.Reject reject => Say($"REJECT: {Of(reject)}."),
        Verdict.Undecided undecided => Say($"UNDECIDED: {Of(undecided.Why)}."),
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "not a case of the closed set"),
    };

    /// <summary>The verdict in a word, as scripts know it.</summary>
    public static string Name(Verdict verdict) => verdict switch
    {
        Verdict.Accept => "accept",
        Verdict.Reject => "reject",
        Verdict.Undecided => "undecided",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "not a case of the closed set"),
    };

    /// <summary>The verdict of a batch in a word or two, as paper says it.</summary>
    public static string Passed(Verdict verdict) => verdict switch
    {
        Verdict.Accept => Say("Accepted"),
        Verdict.Reject => Say("Rejected"),
        Verdict.Undecided => Say("Not decided"),
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "not a case of the closed set"),
    };

    /// <summary>In what a batch fails.</summary>
    public static string Of(Verdict.Reject reject) => string.Join(", ", reject.Defects.Select(d => d switch
    {
        Defect.BodyShort => Say("the body is short"),
        Defect.BodyOver => Say("the body is over"),
        Defect.PhLow => Say("the pH is too low"),
        Defect.PhHigh => Say("the pH is too high"),
        Defect.StringShort => Say("the string is too short"),
        Defect.StringLong => Say("the string is too long"),
        _ => throw new ArgumentOutOfRangeException(nameof(reject), d, "not a defect"),
    }));

    /// <summary>Why a verdict can't be told yet.</summary>
    public static string Of(Doubt doubt) => doubt switch
    {
        Doubt.ReadingsFall => Say("the readings of the pot fall over time, which is not settling"),
        Doubt.NothingSettled => Say("no reading has settled yet"),
        Doubt.TooFewReadings(var needed, 0) => Say($"a verdict needs {needed} readings of the settled pot; there are none"),
        Doubt.TooFewReadings(var needed, 1) => Say($"a verdict needs {needed} readings of the settled pot; there is 1"),
        Doubt.TooFewReadings(var needed, var there) => Say($"a verdict needs {needed} readings of the settled pot; there are {there}"),
        Doubt.PhNotRead => Say("the specification asks for a pH, and none has been read since the pot was last changed"),
        Doubt.StringNotRead => Say("the specification asks for a string length, and none has been read since the pot was last changed"),
        Doubt.BodyNearLimit => Say("the value is too close to a limit, given its uncertainty"),
        Doubt.BodyTooUnsure => Say("the value is still too uncertain for this band"),
        Doubt.PhNearLimit => Say("the pH is too close to a limit for a bench meter to decide"),
        Doubt.StringNearLimit => Say("the string length is too close to a limit, given its uncertainty"),
        _ => throw new ArgumentOutOfRangeException(nameof(doubt), doubt, "not a case of the closed set"),
    };

    /// <summary>What to do, in a sentence or two.</summary>
    public static string Next(BatchCheck check) => check.Next switch
    {
        NextStep.Release => Say("Release it: nothing to add."),
        NextStep.Read { Readings: 1 } read => Say($"Read the pot once more: {Why(read.Why, check)}"),
        NextStep.Read read => Say($"Read the pot {read.Readings} times more: {Why(read.Why, check)}"),
        NextStep.Wait wait => Say($"Let it stand {Shown.Duration(wait.More)} more, then read again: {Why(wait.Why, check)}"),
        NextStep.AdjustPh { Raise: true } ph
            => Say($"Raise the pH to {Ph(ph.Band)} first, in small steps, since what has not swollen swells all at once; stir, and read "
                + $"body and pH again: {Why(ph.Why, check)}"),
        NextStep.AdjustPh ph => Say($"Lower the pH to {Ph(ph.Band)} first, stir, and read body and pH again: {Why(ph.Why, check)}"),
        NextStep.Correct { Advice: { Action: BenchAction.Add add } advice }
            => Say($"Short: add {Shown.Grams(add.Poured)} {advice.Thickener.Name}, stir it in well, let it stand "
                + $"{Shown.Duration(add.Standing)}, and check again. {ReasonWords.Of(advice)}"),
        NextStep.Correct { Advice: { Action: BenchAction.LetDown letDown } advice } => Say($"Over: let it down with "
            + $"{Shown.Grams(letDown.Base)} of base, stir it in well, and check again. {ReasonWords.Of(advice)}"),
        NextStep.Rework rework => Sentence.Capital(Why(rework.What, check)),
        _ => throw new ArgumentOutOfRangeException(nameof(check), check.Next, "not a case of the closed set"),
    };

    private static string Why(StepReason reason, BatchCheck check) => Sentence.Ended(Found(reason) ?? reason switch
    {
        StepReason.ReadingsDecideNothing nothing => Nothing(nothing, check),
        StepReason.Advised { Advice: { Action: BenchAction.GiveUp give } advice } advised
            => $"{Body(advised.IsShort)}. {ReasonWords.Of(give.Remedy)} {ReasonWords.Of(advice)}",
        StepReason.Advised advised => ReasonWords.Of(advised.Advice),
        StepReason.NotAdvised none
            => Say($"{Body(none.IsShort)}, and no correction can be advised: {AdviceWords.Refusal(none.Outcome)}"),
        StepReason.NoThickener { IsShort: true } => Say("the body is short, and the run names no thickener to correct it with: log base "
            + "and thickener to see how much to add"),
        StepReason.NoThickener => Say("the body is over, and the run names no thickener to correct it with: let it down with base in "
            + "small steps, reading after each"),
        StepReason.CurveDisagrees disagrees => Say($"{Body(disagrees.IsShort)}, though the run's curve says otherwise: look at its "
            + $"readings ('viscolog fit'), and read the pot again"),
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "not a case of the closed set"),
    });

    private static string? Found(StepReason reason) => reason switch
    {
        StepReason.Doubtful { Doubt: Doubt.BodyNearLimit or Doubt.BodyTooUnsure or Doubt.StringNearLimit }
            => Say("that decides, if the mean stays where it is"),
        StepReason.Doubtful doubtful => Of(doubtful.Doubt),
        StepReason.SwellsAtPh => Say("the thickener swells only at the right pH, and raising it first may be enough"),
        StepReason.BodyGoesWithPh => Say("the body depends on the pH: read both again afterwards"),
        StepReason.MayStillBuild => Say("the pot may still be building"),
        StepReason.LetItRest => Say("let it rest, stir gently, and read until two readings agree: falling readings mean breakdown under "
            + "shear, bubbles or a change of temperature"),
        StepReason.StringTooShort => Say("the string is too short: a thickener that makes strings, usually an associative one, lengthens "
            + "it; try it on a cupful first"),
        StepReason.StringTooLong
            => Say("the string is too long: base or water shortens it, at the cost of body; try it on a cupful first"),
        StepReason.StringUnsure => Say("have someone else read the string length on a fresh sample"),
        _ => null,
    };

    private static string Body(bool isShort) => isShort ? Say("the body is short") : Say("the body is over");

    private static string Nothing(StepReason.ReadingsDecideNothing nothing, BatchCheck check)
    {
        var reading = nothing.More is { } many
            ? Say($"{many} more readings would decide, which is too many")
            : Say("no number of further readings would decide");
        return nothing.Greatest is { } part
            ? Say($"{reading}: the greatest uncertainty is {UncertaintyWords.Name(part)} ({Relative(part.Size)}); "
                + $"{UncertaintyWords.Remedy(part, check.Run.ReferenceTemperatureInForce)}")
            : reading;
    }

    /// <summary>What a check found, a name and a text each.</summary>
    /// <param name="check">The check.</param>
    /// <param name="today">The day of asking.</param>
    public static IEnumerable<(string Name, string Text)> Rows(BatchCheck check, DateOnly today)
    {
        if (check.Body is { } body)
        {
            yield return (Say("Value"), body.Value is { } value ? Value(value) : Say("no reading counts yet"));
            foreach (var part in body.Value?.Parts ?? [])
            {
                yield return ($"  {UncertaintyWords.Brief(part)}", $"{Relative(part.Size)}: {UncertaintyWords.Of(part)}");
            }

            yield return (
                Say("Band", "check"),
                $"{Shown.Edges(body.Band)} mPa·s");
            yield return (Say("Conforms"), Chance(body.Chance) + (body.Value is { } judgedBy ? Law(judgedBy) : ""));
        }

        if (check.Acidity is { } acidity)
        {
            var mean = acidity.Mean is { } ph
                ? string.Create(Numbers, $"{ph.Ph:0.00} ± {AcidityCheck.StandardUncertainty:0.0}")
                : Say("not read");
            yield return ("pH", Say($"{mean}, wanted {Ph(acidity.Band)}: {Chance(acidity.Chance)}"));
        }

        if (check.StringLength is { } strings)
        {
            var band = strings.Band;
            var mean = strings.Mean is { } mm ? $"{Shown.Number(mm.Millimeters)} mm ± {Relative(strings.Uncertainty)}" : Say("not read");
            var wanted = Say($"{Shown.Number(band.Low.Millimeters)} to {Shown.Number(band.High.Millimeters)}");
            yield return (Say("String", "check"), Say($"{mean}, wanted {wanted} mm: {Chance(strings.Chance)}"));
        }

        if (check.Body is { Value: not null } judged)
        {
            yield return (Say("Rule"), Rule(judged));
        }

        if (check.Drift is { } drift)
        {
            yield return (Say("Method"), DriftWords.Of(drift, today));
        }
    }

    /// <summary>The law behind a chance where it is not the normal one.</summary>
    private static string Law(BatchValue value)
        => value.DegreesOfFreedom <= MostFreedom ? Say($", by Student's t with {UncertaintyWords.Freedom(value.DegreesOfFreedom)}") : "";

    private static string Chance(Percentage? chance) => chance is { } known ? Shown.Chance(known) : Say("unknown");

    /// <summary>A band of pH.</summary>
    public static string Ph(AcidityBand band) => Say($"{band.Low.Ph:0.0#} to {band.High.Ph:0.0#}");

    /// <summary>A value with its standard uncertainty.</summary>
    public static string Value(BatchValue value)
        => $"{Shown.Uncertain(value.Body, value.StandardUncertainty)} (k = 1, {Relative(value.Uncertainty)}), {Mean(value)}";

    /// <summary>A value with the uncertainty that contains it 95 times in 100.</summary>
    public static string Expanded(BatchValue value)
        => $"{Shown.ToUncertainty(value.Body, value.StandardUncertainty)} ± {ExpandedUncertainty(value)} mPa·s";

    /// <summary>The expanded uncertainty, to the digit that the value is rounded to.</summary>
    public static string ExpandedUncertainty(BatchValue value) => Shown.ToUncertainty(
        Viscosity.FromMilliPascalSeconds(value.Coverage * value.StandardUncertainty.MilliPascalSeconds), value.StandardUncertainty);

    /// <summary>How many standard uncertainties make an interval of 95 %.</summary>
    public static string CoverageFactor(BatchValue value) => string.Create(Numbers, $"{value.Coverage:0.#}");

    /// <summary>What the value is made of.</summary>
    public static string Mean(BatchValue value)
        => value.Readings == 1 ? Say("mean of 1 reading") : Say($"mean of {value.Readings.ToString("N0", Spaced)} readings");

    /// <summary>A relative size.</summary>
    public static string Relative(Percentage size) => string.Create(Numbers, $"{size.Percent:0.0} %");

    /// <summary>The decision rule.</summary>
    public static string Rule() => Say($"accept from {DecisionRule.AcceptFrom.Percent:0} % "
        + $"probability of conformity, reject up to {DecisionRule.RejectUpTo.Percent:0} %, else undecided (JCGM 106:2012)");

    /// <summary>The decision rule with its guard band.</summary>
    public static string Rule(BodyCheck body) => body.Accepted is { } inside
        ? Say($"{Rule()}; guard band {body.GuardBand!.Value.Percent:0.0} %: means "
            + $"from {Shown.Limit(inside.Low.MilliPascalSeconds)} to {Shown.Limit(inside.High.MilliPascalSeconds)} mPa·s are accepted")
        : Say($"{Rule()}; with this uncertainty no mean could be accepted: the band is too narrow");
}
