using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>Why something is advised, and what to change, in sentences.</summary>
internal static class ReasonWords
{
    /// <summary>Why, in a sentence or two.</summary>
    public static string Of(Advice advice) => Of(advice.Why, advice.Quantities.Length > 1);

    /// <summary>What to change, in a few words.</summary>
    public static string Of(Remedy remedy) => remedy switch
    {
        Remedy.RaisePh => "Raise the pH first.",
        Remedy.ThinnerBase => "Use a thinner base.",
        Remedy.LessStringyBase => "Use a less stringy base.",
        Remedy.SplitPot => "Split the pot.",
        Remedy.WeighFiner => "Weigh finer.",
        Remedy.FindCause => "Stop adding it: find the cause first.",
        Remedy.WiderBand => "Widen the band, or use a method that scatters less.",
        Remedy.AnotherTarget => "This target can't be reached this way.",
        Remedy.OneOfTwo => "Aim for one of the two.",
        Remedy.Trade => "Body and string can't both be reached this way.",
        _ => throw new ArgumentOutOfRangeException(nameof(remedy), remedy, "not a remedy"),
    };

    /// <summary>What the reader of advice must know.</summary>
    public static string Of(AdviceWarning warning) => warning switch
    {
        AdviceWarning.OfEvidence evidence => EvidenceWords.Of(evidence.Warning),
        AdviceWarning.HardlyThickened => "the thickener has hardly thickened so far: check the pH, the product and the mixing before "
            + "adding more",
        AdviceWarning.UnlikeHistory { IsSure: true } => "this pot does not behave like the earlier runs, so they are ignored: check that "
            + "base and thickener are the ones the run names",
        AdviceWarning.UnlikeHistory => "this pot may not behave like the earlier runs, so they count for less: check that base and "
            + "thickener are the ones the run names",
        AdviceWarning.HistoryLeftAside aside => $"no earlier run has this base and '{aside.Thickener}' with readings at two doses or "
            + $"more, so none was used",
        AdviceWarning.PhNotRead missing => $"no pH has been read, and '{missing.Thickener}' swells only at the right pH (usually about "
            + "8.5 to 9.5): read the pH before adding more",
        AdviceWarning.StockWater stock => string.Create(CultureInfo.InvariantCulture, $"this addition brings {stock.Water.Grams:0.#} g of "
            + $"water into {stock.Pot.Grams:0.#} g: it thins both binder and body; a stronger stock would thin them less"),
        AdviceWarning.RisesWithoutEnd rising
            => string.Create(CultureInfo.InvariantCulture, $"after {Shown.Duration(rising.Stood)} the body "
            + $"still rises ({rising.Rise.Percent:0} % over the second half of that time): unless this is slow swelling, the pot may be "
            + $"drying or forming a skin: cover it, stir, and read again"),
        AdviceWarning.FewScaleSteps => "the increment is under three steps of the scale: dilute the thickener with water (1:3, say), "
            + "enter the dilution, and weigh that instead",
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "not a case of the closed set"),
    };

    /// <summary>A chance as a person says it.</summary>
    public static string OneIn(Percentage chance) => chance.Fraction switch
    {
        <= 0.0001 => "less than 1 in 10000",
        >= 0.95 => "almost certain",
        >= 0.5 => FormattableString.Invariant($"{10 * chance.Fraction:0} in 10"),
        _ => FormattableString.Invariant($"1 in {Digits(1 / chance.Fraction, 2, 1)}"),
    };

    /// <summary>Why a dose is the one to test.</summary>
    public static string Of(TestDose next) => string.Create(CultureInfo.InvariantCulture,
        $"A reading there teaches most about the whole curve: the uncertainty (as variance) over the usual range is expected to fall "
        + $"by {next.Gain.Percent:0} %. It ignores the target: to bring a pot into band, ask for advice instead.");

    /// <summary>What holds of an addition that was asked about.</summary>
    public static IEnumerable<string> Notes(WhatIf asked)
    {
        yield return asked.ChanceOver > asked.Risk
            ? $"{(asked.ChanceOver.Fraction >= 0.95 ? "Going over is" : "The chance of going over is")}"
                + $" {OneIn(asked.ChanceOver)}; advice stays "
                + $"within {OneIn(asked.Risk)}."
            : $"The chance of going over stays within {OneIn(asked.Risk)}, as advice requires.";
        if (asked.BeyondLimit is { } limit)
        {
            yield return $"It goes beyond the dose limit: {limit.Why}.";
        }

        if (asked.MostAtOnce is { } most)
        {
            yield return FormattableString.Invariant($"It is more than advice adds in one step ({most.Percent:0} % of the usual range).");
        }
    }

    private static string Of(AdviceReason why, bool isOfTwo)
        => Reading(why, isOfTwo) ?? Judging(why, isOfTwo) ?? LettingDown(why, isOfTwo) ?? GivingUp(why) ?? Adding(why);

    private static string? Reading(AdviceReason why, bool isOfTwo) => why switch
    {
        AdviceReason.TooFarFromReference far => string.Create(CultureInfo.InvariantCulture, $"The pot was too far from "
            + $"{far.Reference.Celsius:0.#} °C when it was read: bring it within 10 °C and read again."),
        AdviceReason.NothingRead => isOfTwo
            ? "Nothing has been read yet: read the body of the pot as it is, and draw a string, before adding anything."
            : "No body has been read yet: read the pot as it is before adding anything.",
        AdviceReason.NotReadSinceChange => $"Nothing has been read since the pot was last changed: stir, let it stand, "
            + $"read{(isOfTwo ? " the body and draw a string" : "")}.",
        AdviceReason.StringNotRead { Ever: false } => "No string has been read yet, and advice on the string needs one: lift a stick "
            + "from the pot and note the length in mm at which the string breaks (string_mm).",
        AdviceReason.StringNotRead => "The string has not been read since the pot was last changed: lift a stick and note the length in "
            + "mm at which the string breaks.",
        AdviceReason.LowPh low => string.Create(CultureInfo.InvariantCulture, $"At pH {low.Ph:0.0} an alkali-swellable thickener hardly "
            + $"swells, so its curve means nothing (about 8.5 to 9.5 is usual)."),
        AdviceReason.Falls => "The readings of this step fall over time, which is not settling (breakdown under shear, bubbles, "
            + "temperature): let it rest, stir gently, and read until two agree.",
        AdviceReason.LumpsSeen => "Lumps were seen: stir until they are gone, let the pot stand, read again and note what you see. What "
            + "was added still counts.",
        AdviceReason.Contradicted contradicted => $"{Of(contradicted.What)}{Of(contradicted.What.Blunder)}: stir gently and read again "
            + $"before adding anything.",
        AdviceReason.StillBuilds builds => string.Create(CultureInfo.InvariantCulture,
            $"It may still be building: about {Rise(100 * builds.ToCome)} % is expected, and it counts as settled below "
                + $"{builds.Repeatability.Percent / 2:0.#} %, or when two readings agree within {builds.Repeatability.Percent:0.#} % and "
                + $"the time between them is at least as long as the pot had stood before the first."),
        _ => null,
    };

    private static string? Judging(AdviceReason why, bool isOfTwo) => why switch
    {
        AdviceReason.InBandOnOneReading => "It looks in band, but on a single reading: read the same pot once more to be sure.",
        AdviceReason.ProbablyInBand => "Probably in band, but the readings so far don't settle it: one more reading of the same pot "
            + "will.",
        AdviceReason.MaybeInBand => "It may be in band already, and one reading is not enough to tell: read the same pot once more "
            + "before adding what can't be taken out.",
        AdviceReason.InBand => isOfTwo ? "Body and string are both in band, even allowing for reading error." : "The settled body is "
            + "in band, even allowing for reading error.",
        AdviceReason.LikelyInBand => $"More likely in band than not{(isOfTwo ? ", body and string" : "")}, and no addition would improve "
            + $"the odds; further readings would change little.",
        AdviceReason.MaybeOver => "The pot may already be over, so add nothing more: one more reading of the same pot will settle it.",
        AdviceReason.BodyDoubtful => "The readings so far leave the body too uncertain: read the same pot once more to decide.",
        AdviceReason.StringDoubtful doubtful => string.Create(CultureInfo.InvariantCulture, $"A single string reading is good only to "
            + $"{doubtful.Repeatability.Percent:0} %: draw one more from the same pot to decide."),
        AdviceReason.StringUntold => "The readings so far leave the string too uncertain: draw one more from the same pot.",
        AdviceReason.StringKeepsAdditionSmall small => string.Create(CultureInfo.InvariantCulture,
            $"A single string reading is good only to {small.Repeatability.Percent:0} %, and that alone keeps the next addition small: "
                + $"draw one more from the same pot."),
        AdviceReason.BodyMayPass => "The body seems likely to pass its band before the string reaches its own: draw one more string "
            + "before adding base.",
        _ => null,
    };

    private static string? LettingDown(AdviceReason why, bool isOfTwo) => why switch
    {
        AdviceReason.Over { Quantity: Quantity.Body } when !isOfTwo
            => "The body is over the band and an addition can't be taken out again: base brings the dose back down. If that turns out a "
                + "little too much, add thickener in small doses.",
        AdviceReason.Over { Quantity: Quantity.Body }
            => "The body is over the band and an addition can't be taken out again: base brings both doses back down. Make up what the "
                + "string then lacks in small doses.",
        AdviceReason.Over => "The string is over its band and an addition can't be taken out again: base brings both doses back down. "
            + "Make up what the body then lacks in small doses.",
        AdviceReason.BodyWouldPass pass => string.Create(CultureInfo.InvariantCulture,
            $"The body would pass its band before the string reaches its own: the string needs about {pass.StillWanted.Percent:0.0#} % "
                + $"more {pass.Thickener}, which thickens too. Adding base now makes room for it."),
        AdviceReason.StringWouldPass pass => string.Create(CultureInfo.InvariantCulture,
            $"The string is near the top of its band, and the {pass.StillWanted.Percent:0.0#} % {pass.Thickener} that the body still "
                + $"needs may take it over. Adding base now makes room for it."),
        AdviceReason.BaseIsOver { Quantity: Quantity.Body } => $"The {(isOfTwo ? "body" : "pot")} is over, and even the base alone is "
            + $"expected to be above the target: use a thinner base.",
        AdviceReason.BaseIsOver => "The string is over, and even the base alone is expected to draw a longer string than wanted.",
        AdviceReason.TooMuchBase much when isOfTwo => string.Create(CultureInfo.InvariantCulture,
            $"{Of(much.Why, isOfTwo)} Letting it down would take {much.Base.Grams:0} g of base, more than there is in the pot: split it "
                + $"and let down one part."),
        AdviceReason.TooMuchBase much => string.Create(CultureInfo.InvariantCulture, $"The pot is over, and letting it down would take "
            + $"{much.Base.Grams:0} g of base, more than there is in the pot: split it and let down one part."),
        AdviceReason.BaseTooSmall small => string.Create(CultureInfo.InvariantCulture, $"Correcting this takes less base than the scale "
            + $"can weigh (step {small.Step.Grams:0.###} g): use a finer scale."),
        _ => null,
    };

    private static string? GivingUp(AdviceReason why) => why switch
    {
        AdviceReason.FallsWithDose falls => $"{(falls.Quantity == Quantity.Body ? "The body" : "The string")} falls as "
            + $"'{falls.Thickener}' is added: "
            + $"{string.Join(", ", falls.Values.Select(v => Digits(v, 3).ToString(CultureInfo.InvariantCulture)))} "
            + $"{(falls.Quantity == Quantity.Body ? "mPa·s" : "mm")}. Adding more would not help. Possible causes: pH, salt, the wrong "
            + $"material, hard stirring that breaks the body down, water from a stock, or a dose beyond the peak of the curve.",
        AdviceReason.BandTooNarrow narrow => string.Create(CultureInfo.InvariantCulture, $"The band, ±{narrow.HalfWidth.Percent:0.#} %, is "
            + $"narrower than the readings can resolve: one reading scatters by about {narrow.Repeatability.Percent:0.#} %, and even "
            + $"several readings exactly on target would not show that the pot is in band. It is about there."),
        AdviceReason.IncrementTooSmall small => string.Create(CultureInfo.InvariantCulture, $"The next increment is smaller than the "
            + $"scale's step ({small.Step.Grams:0.###} g): pre-dilute the thickener, or use a finer scale."),
        AdviceReason.LimitInTheWay way => $"The dose limit prevents it ({way.Limit.Why}): aim lower, or use a stronger thickener or a "
            + $"base with more body.",
        AdviceReason.OutOfReach reach => $"The band is out of reach with '{reach.Thickener}' within its dose limit: aim lower, or use a "
            + $"stronger thickener or a base with more body.",
        AdviceReason.StringOutOfReach reach => string.Create(CultureInfo.InvariantCulture,
            $"Within its dose limit '{reach.Thickener}' is expected to bring the string to only {reach.Longest.Millimeters:0.#} mm: aim "
                + $"for a shorter string, or use a thickener that gives more."),
        AdviceReason.NotBoth both => string.Create(CultureInfo.InvariantCulture,
            $"Body and string can't both be reached: the string needs {both.StringDose.Percent:0.0#} % '{both.Thickeners.Strings}', which "
                + $"brings the body to about {Three(both.Body)} mPa·s. With the body in band the string reaches about "
                + $"{both.Reached.Millimeters:0.#} mm. Choose: a shorter string, more body, less '{both.Thickeners.Body}' from the start, "
                + $"or a thinner base."),
        AdviceReason.BodyOutOfReach reach => string.Create(CultureInfo.InvariantCulture,
            $"Within the dose limits the body is expected to reach only about {Three(reach.Stiffest)} mPa·s: aim lower, or use a "
                + $"stronger thickener than '{reach.Thickener}' or a base with more body."),
        AdviceReason.NothingSafe => "The readings leave no addition whose chance of going over is small enough: repeat the readings, or "
            + "accept a greater risk.",
        _ => null,
    };

    private static string Adding(AdviceReason why) => why switch
    {
        AdviceReason.Chosen chosen => Known(chosen) + Bound(chosen)
            + (chosen.IsShapeOpen ? " Several shapes of curve still fit the readings." : ""),
        AdviceReason.ChosenOfTwo { IsStringFirst: true } chosen
            => "String first: what the string needs also thickens, so the body is finished last. " + Bound(chosen),
        AdviceReason.ChosenOfTwo chosen => Bound(chosen),
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, "not a case of the closed set"),
    };

    private static string Known(AdviceReason.Chosen chosen)
    {
        var history = chosen.EarlierRuns switch
        {
            0 => "",
            1 => "One earlier run of this base and thickener was used. ",
            var runs => FormattableString.Invariant($"{runs} earlier runs of this base and thickener were used. "),
        };
        return chosen.FewDoses switch
        {
            null => history,
            1 => "One dose says nothing about the slope yet, so the usual behaviour of thickeners decides. ",
            var doses => $"{(doses == 2 ? "Two" : doses.Value.ToString(CultureInfo.InvariantCulture))} doses are too few to trust the "
                + $"slope far beyond them; there the usual behaviour of thickeners decides. ",
        };
    }

    private static string Bound(AdviceReason.Chosen chosen) => chosen.Bound switch
    {
        ChoiceBound.BestChance => "This dose is the most likely to land in band; more would be more likely to overshoot.",
        ChoiceBound.BodyRisk => string.Create(CultureInfo.InvariantCulture, $"Stopping here keeps the chance of going over within "
            + $"{chosen.Risk.Percent:0.##} % ({OneIn(chosen.Risk)})."),
        ChoiceBound.StepCap when chosen.IsOnKnownGround => string.Create(CultureInfo.InvariantCulture,
            $"No single step exceeds the doses that earlier runs have read, nor {100 * IncrementPolicy.KnownStepCap:0} % of "
                + $"the usual range."),
        ChoiceBound.StepCap => StepCap,
        ChoiceBound.Limit => $"The step ends at the dose limit: {chosen.Limit.Why}.",
        _ => throw new ArgumentOutOfRangeException(nameof(chosen), chosen.Bound, "not a bound of one thickener"),
    };

    private static string Bound(AdviceReason.ChosenOfTwo chosen) => chosen.Bound switch
    {
        ChoiceBound.BestChance => "This dose has the best chance of ending with body and string both in band.",
        ChoiceBound.BodyRisk or ChoiceBound.StringRisk => string.Create(CultureInfo.InvariantCulture,
            $"Stopping here keeps the chance of going over, in body or string, within {chosen.Risk.Percent:0.##} % "
                + $"({OneIn(chosen.Risk)}); the {(chosen.Bound == ChoiceBound.BodyRisk ? "body" : "string")} is the closer of the two."),
        ChoiceBound.Room => $"Stopping here leaves room for the {chosen.Thickeners.Other} still to come, which changes "
            + $"{(chosen.Quantity == Quantity.Stringiness ? "the string" : "the body")} too.",
        ChoiceBound.StepCap => StepCap,
        ChoiceBound.Limit => $"The step ends at the dose limit of {chosen.Thickeners.This}.",
        _ => throw new ArgumentOutOfRangeException(nameof(chosen), chosen.Bound, "not a bound"),
    };

    private static string StepCap => string.Create(CultureInfo.InvariantCulture, $"No single step exceeds "
        + $"{100 * IncrementPolicy.StepCap:0} % of the usual range, however far off the target is.");

    private static string Of(Contradiction what) => what switch
    {
        Contradiction.Unexpected unexpected => $"The last reading is {Apart(unexpected.Ratio)} what the others suggest",
        Contradiction.Fell fell => $"The body reads {Apart(fell.Ratio)} what it read before, though thickener was added",
        Contradiction.Jumped jumped => $"The body reads {Apart(jumped.Ratio)} what it read before so small an addition",
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, "not a case of the closed set"),
    };

    /// <summary>A reading that nothing led to expect, without a full stop.</summary>
    public static string Of(Surprise surprise) => $"{Apart(surprise.Ratio)} what was expected{Of(surprise.Blunder)}";

    /// <summary>What was perhaps written down wrongly, in brackets.</summary>
    public static string Of(Blunder blunder) => blunder switch
    {
        Blunder.DigitTooMany => " (a digit too many?)",
        Blunder.DigitTooFew => " (a digit too few?)",
        Blunder.OtherUnit => " (Pa·s for mPa·s?)",
        _ => "",
    };

    private static string Apart(double ratio) => ratio switch
    {
        >= 3 => $"{TwoDigits(ratio)} times",
        <= 0.2 => $"1/{TwoDigits(1 / ratio)} of",
        >= 1 => FormattableString.Invariant($"{100 * (ratio - 1):0} % above"),
        _ => FormattableString.Invariant($"{100 * (1 - ratio):0} % below"),
    };

    private static string TwoDigits(double value)
    {
        var grain = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return Shown.Number(Math.Round(value / grain) * grain);
    }

    private static string Rise(double percent)
        => percent < 10 ? FormattableString.Invariant($"{percent:0.#}") : FormattableString.Invariant($"{percent:0}");

    private static double Three(Viscosity body) => Digits(body.MilliPascalSeconds, 3);

    private static double Digits(double value, int digits, double least = 0)
    {
        var grain = Math.Max(least, Math.Pow(10, Math.Floor(Math.Log10(value)) - digits + 1));
        return Math.Round(value / grain) * grain;
    }
}
