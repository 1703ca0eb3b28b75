using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Checking;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>A check in words, the same on the screen and in print.</summary>
internal static class CheckWords
{
    /// <summary>Beyond so many degrees of freedom Student's t is the normal law for a reader.</summary>
    private const double MostFreedom = 100;

    /// <summary>The verdict, one line.</summary>
    public static string Headline(Verdict verdict) => verdict switch
    {
        Verdict.Accept => "ACCEPT. It meets the specification.",
        Verdict.Reject reject => $"REJECT: {reject.Why}.",
        Verdict.Undecided undecided => $"UNDECIDED: {undecided.Why}.",
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

    /// <summary>What to do, in a sentence or two.</summary>
    public static string Next(NextStep next) => next switch
    {
        NextStep.Release => "Release it: nothing to add.",
        NextStep.Read read => $"Read the pot {(read.Readings == 1 ? "once" : $"{read.Readings} times")} more: "
            + $"{Sentence.Ended(Why(read.Why))}",
        NextStep.Wait wait => $"Let it stand {Shown.Duration(wait.More)} more, then read again: {Sentence.Ended(Why(wait.Why))}",
        NextStep.AdjustPh ph => $"{(ph.Raise ? "Raise" : "Lower")} the pH to {Ph(ph.Band)} first, stir, and read body and pH again: "
            + $"{Sentence.Ended(Why(ph.Why))}",
        NextStep.Correct { Advice: { Action: BenchAction.Add add } advice }
            => $"Short: add {Shown.Grams(add.Poured)} {advice.Thickener.Name}, stir it in well, let it stand "
                + $"{Shown.Duration(add.Standing)}, and check again. {ReasonWords.Of(advice)}",
        NextStep.Correct { Advice: { Action: BenchAction.LetDown letDown } advice }
            => $"Over: let it down with {Shown.Grams(letDown.Base)} of base, stir it in well, and check again. {ReasonWords.Of(advice)}",
        NextStep.Rework rework => Sentence.Of(Why(rework.What)),
        _ => throw new ArgumentOutOfRangeException(nameof(next), next, "not a case of the closed set"),
    };

    private static string Why(StepReason reason) => reason switch
    {
        StepReason.Found found => found.Words,
        StepReason.Advised { Advice: { Action: BenchAction.GiveUp give } advice } advised => $"the body is "
            + $"{(advised.IsShort ? "short" : "over")}. {ReasonWords.Of(give.Remedy)} {ReasonWords.Of(advice)}",
        StepReason.Advised advised => ReasonWords.Of(advised.Advice),
        StepReason.NotAdvised none => $"the body is {(none.IsShort ? "short" : "over")}, and no correction can be advised: "
            + $"{AdviceWords.Refusal(none.Outcome)}",
        StepReason.NoThickener { IsShort: true }
            => "the body is short, and the run names no thickener to correct it by: log its base and thickener to be told how much to add",
        StepReason.NoThickener
            => "the body is over, and the run names no thickener to correct it by: let it down with base in small steps, reading after each",
        StepReason.CurveDisagrees disagrees => $"the body is {(disagrees.IsShort ? "short" : "over")}, though the run's curve says otherwise: "
            + "look at its readings ('viscolog fit'), and read the pot again",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "not a case of the closed set"),
    };

    /// <summary>What a check found, a name and a text each.</summary>
    /// <param name="check">The check.</param>
    /// <param name="today">The day of asking.</param>
    public static IEnumerable<(string Name, string Text)> Rows(BatchCheck check, DateOnly today)
    {
        if (check.Body is { } body)
        {
            yield return ("Value", body.Value is { } value ? Value(value) : "no reading counts yet");
            foreach (var part in body.Value?.Parts ?? [])
            {
                yield return ($"  {part.Name}", $"{Relative(part.Size)}: {part.Words}");
            }

            yield return (
                "Band", $"{Shown.Limit(body.Band.Low.MilliPascalSeconds)} to {Shown.Limit(body.Band.High.MilliPascalSeconds)} mPa·s");
            yield return ("Conforms", Chance(body.Chance) + (body.Value is { } judgedBy ? Law(judgedBy) : ""));
        }

        if (check.Acidity is { } acidity)
        {
            var mean = acidity.Mean is { } ph
                ? FormattableString.Invariant($"{ph.Ph:0.00} ± {AcidityCheck.StandardUncertainty:0.0}")
                : "not read";
            yield return ("pH", $"{mean}, wanted {Ph(acidity.Band)}: {Chance(acidity.Chance)}");
        }

        if (check.StringLength is { } strings)
        {
            var band = strings.Band;
            var mean = strings.Mean is { } mm ? $"{Shown.Number(mm.Millimeters)} mm ± {Relative(strings.Uncertainty)}" : "not read";
            var wanted = $"{Shown.Number(band.Low.Millimeters)} to {Shown.Number(band.High.Millimeters)}";
            yield return ("String", $"{mean}, wanted {wanted} mm: {Chance(strings.Chance)}");
        }

        if (check.Body is { Value: not null } judged)
        {
            yield return ("Rule", Rule(judged));
        }

        if (check.Drift is { } drift)
        {
            yield return ("Method", drift.Words(today));
        }
    }

    /// <summary>The law behind a chance where it is not the normal one.</summary>
    private static string Law(BatchValue value)
        => value.DegreesOfFreedom <= MostFreedom ? $", by Student's t with {Freedom(value.DegreesOfFreedom)}" : "";

    /// <summary>Degrees of freedom.</summary>
    public static string Freedom(double freedom) => freedom > MostFreedom
        ? "many degrees of freedom" : FormattableString.Invariant($"{freedom:0.#} degrees of freedom");

    private static string Chance(Percentage? chance) => chance is { } known ? Shown.Chance(known) : "can't be told";

    /// <summary>A band of pH.</summary>
    public static string Ph(AcidityBand band) => FormattableString.Invariant($"{band.Low.Ph:0.0#} to {band.High.Ph:0.0#}");

    /// <summary>A value with its standard uncertainty.</summary>
    public static string Value(BatchValue value)
        => $"{Shown.Uncertain(value.Body, value.StandardUncertainty)} (k = 1, {Relative(value.Uncertainty)}), {Mean(value)}";

    /// <summary>What the value is made of.</summary>
    public static string Mean(BatchValue value) => $"mean of {Count.Of(value.Readings, "reading", "readings")}";

    /// <summary>A relative size.</summary>
    public static string Relative(Percentage size) => FormattableString.Invariant($"{size.Percent:0.0} %");

    /// <summary>The decision rule with its guard band.</summary>
    public static string Rule(BodyCheck body) => body.Accepted is { } inside
        ? string.Create(CultureInfo.InvariantCulture, $"{DecisionRule.Words}; guard band {body.GuardBand!.Value.Percent:0.0} %: means "
            + $"from {Shown.Limit(inside.Low.MilliPascalSeconds)} to {Shown.Limit(inside.High.MilliPascalSeconds)} mPa·s are accepted")
        : $"{DecisionRule.Words}; at this uncertainty no mean would be accepted: the band is too narrow for it";
}
