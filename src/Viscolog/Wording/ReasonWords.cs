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
        Remedy.ThinnerBase => "Take a thinner base.",
        Remedy.LessStringyBase => "Take a base with less string.",
        Remedy.SplitPot => "Split the pot.",
        Remedy.WeighFiner => "Weigh finer.",
        Remedy.FindCause => "Add no more of it: find the cause first.",
        Remedy.WiderBand => "State a wider band, or take a method that scatters less.",
        Remedy.AnotherTarget => "The target can't be had this way.",
        Remedy.OneOfTwo => "Aim for one of the two.",
        Remedy.Trade => "Body and string can't both be had this way.",
        _ => throw new ArgumentOutOfRangeException(nameof(remedy), remedy, "not a remedy"),
    };

    /// <summary>What the reader of advice must know.</summary>
    public static string Of(AdviceWarning warning) => warning switch
    {
        AdviceWarning.OfEvidence evidence => EvidenceWords.Of(evidence.Warning),
        AdviceWarning.HardlyThickened => "the thickener has hardly thickened so far: check the pH, the product and the mixing before "
            + "more goes in",
        AdviceWarning.UnlikeHistory { IsSure: true } => "this pot is unlike the earlier runs, which therefore count for nothing: check "
            + "that base and thickener are those that the run names",
        AdviceWarning.UnlikeHistory => "this pot may be unlike the earlier runs, which therefore count for less: check that base and "
            + "thickener are those that the run names",
        AdviceWarning.HistoryLeftAside aside => $"none of the earlier runs is of this base and '{aside.Thickener}' with readings at two "
            + $"doses or more; they were left aside",
        AdviceWarning.PhNotRead missing => $"no pH has been read, and '{missing.Thickener}' swells at the right pH only (about 8.5 to 9.5 is "
            + "usual): read it before more goes in",
        AdviceWarning.StockWater stock => string.Create(CultureInfo.InvariantCulture, $"this addition brings {stock.Water.Grams:0.#} g of "
            + $"water into {stock.Pot.Grams:0.#} g: it thins binder and body alike, and a stronger stock would thin them less"),
        AdviceWarning.RisesWithoutEnd rising => string.Create(CultureInfo.InvariantCulture, $"after {Shown.Duration(rising.Stood)} the body "
            + $"still rises ({rising.Rise.Percent:0} % over the second half of that time): if this is no slow swelling, it may be drying "
            + $"or a skin; cover the pot, stir, and read again"),
        AdviceWarning.FewScaleSteps => "the increment is under three steps of the scale: cut the thickener with water (1:3, say), state "
            + "the dilution, and weigh that instead",
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
        + $"by {next.Gain.Percent:0} %. It heeds no target: to bring a pot into a band ask for advice instead.");

    /// <summary>What holds of an addition that was asked about.</summary>
    public static IEnumerable<string> Notes(WhatIf asked)
    {
        yield return asked.ChanceOver > asked.Risk
            ? $"The chance of over is {OneIn(asked.ChanceOver)}, more than the {OneIn(asked.Risk)} that advice keeps to."
            : $"The chance of over stays within the {OneIn(asked.Risk)} that advice keeps to.";
        if (asked.BeyondLimit is { } limit)
        {
            yield return $"It goes beyond the dose limit: {limit.Why}.";
        }

        if (asked.MostAtOnce is { } most)
        {
            yield return FormattableString.Invariant($"It is more than advice pours at once ({most.Percent:0} % of the usual range).");
        }
    }

    private static string Of(AdviceReason why, bool isOfTwo)
        => Reading(why, isOfTwo) ?? Judging(why, isOfTwo) ?? LettingDown(why, isOfTwo) ?? GivingUp(why) ?? Adding(why);

    private static string? Reading(AdviceReason why, bool isOfTwo) => why switch
    {
        AdviceReason.TooFarFromReference far => string.Create(CultureInfo.InvariantCulture, $"The pot was read too far from "
            + $"{far.Reference.Celsius:0.#} °C: bring it within 10 °C of that and read again."),
        AdviceReason.NothingRead => isOfTwo
            ? "Nothing has been read yet: read the body of the pot as it stands, and draw a string, before anything goes in."
            : "No body has been read yet: read the pot as it stands before anything goes in.",
        AdviceReason.NotReadSinceChange => $"Nothing has been read since the pot was last changed: stir, let it stand, "
            + $"read{(isOfTwo ? " the body and draw a string" : "")}.",
        AdviceReason.StringNotRead { Ever: false } => "No string has been read yet, and advice on the string rests on readings of it: "
            + "lift a stick from the pot and note in mm where its string breaks (string_mm).",
        AdviceReason.StringNotRead => "The string has not been read since the pot was last changed: lift a stick and note in mm where its "
            + "string breaks.",
        AdviceReason.LowPh low => string.Create(CultureInfo.InvariantCulture, $"At pH {low.Ph:0.0} an alkali-swellable thickener hardly "
            + $"swells, and its curve means nothing (about 8.5 to 9.5 is usual)."),
        AdviceReason.Falls => "The readings of this step fall over time, which is not settling (breakdown under shear, bubbles, "
            + "temperature): let it rest, stir gently, and read until two agree.",
        AdviceReason.LumpsSeen => "Lumps were seen: stir until they are gone, let the pot stand, read again and note what you see. What went "
            + "in stays in and counts.",
        AdviceReason.Contradicted contradicted => $"{Of(contradicted.What)}{Of(contradicted.What.Blunder)}: stir gently and read again before anything goes in.",
        AdviceReason.StillBuilds builds => string.Create(CultureInfo.InvariantCulture,
            $"It may still build: about {Rise(100 * builds.ToCome)} % is to come, and under {builds.Repeatability.Percent / 2:0.#} % "
                + $"counts as settled. Two readings that agree within {builds.Repeatability.Percent:0.#} % settle it as well, if as much "
                + $"time lies between them as the pot had stood before the first."),
        _ => null,
    };

    private static string? Judging(AdviceReason why, bool isOfTwo) => why switch
    {
        AdviceReason.InBandOnOneReading => "It looks in band, but on a single reading: read the same pot once more to be sure.",
        AdviceReason.ProbablyInBand => "Probably in band, but the readings so far can't tell well enough: one more reading of the same "
            + "pot decides.",
        AdviceReason.MaybeInBand => "It may be in band already, and one reading can't tell: read the same pot once more before an "
            + "addition that can't be taken out again.",
        AdviceReason.InBand => isOfTwo ? "Body and string are both in band, the errors of the readings counted." : "The settled body is "
            + "in band, the reading's own error counted.",
        AdviceReason.LikelyInBand => $"More likely in band than not{(isOfTwo ? ", body and string" : "")}, and no addition would make it "
            + $"likelier; further readings would change little.",
        AdviceReason.MaybeOver => "The pot may already be over, so nothing more goes in: one more reading of the same pot decides.",
        AdviceReason.BodyDoubtful => "The body can't be told well enough from the readings so far: read the same pot once more; it "
            + "decides.",
        AdviceReason.StringDoubtful doubtful => string.Create(CultureInfo.InvariantCulture, $"One reading of a string is good to "
            + $"{doubtful.Repeatability.Percent:0} % only: draw one more from the same pot; it decides."),
        AdviceReason.StringUntold => "The string can't be told well enough from the readings so far: draw one more from the same pot.",
        AdviceReason.StringKeepsAdditionSmall small => string.Create(CultureInfo.InvariantCulture,
            $"One reading of a string is good to {small.Repeatability.Percent:0} % only, and that alone keeps the next addition small: "
                + $"draw one more from the same pot."),
        AdviceReason.BodyMayPass => "It looks as if the body would pass its band before the string arrives: draw one more string before "
            + "base goes in.",
        _ => null,
    };

    private static string? LettingDown(AdviceReason why, bool isOfTwo) => why switch
    {
        AdviceReason.Over { Quantity: Quantity.Body } when !isOfTwo
            => "The body is over the band and an addition can't be taken out again: base brings the dose back down. Should that be a "
                + "little too much, thickener can follow in small doses.",
        AdviceReason.Over { Quantity: Quantity.Body }
            => "The body is over the band and an addition can't be taken out again: base brings both doses back down. What the string "
                + "then lacks can follow in small doses.",
        AdviceReason.Over => "The string is over its band and an addition can't be taken out again: base brings both doses back down. "
            + "What the body then lacks can follow in small doses.",
        AdviceReason.BodyWouldPass pass => string.Create(CultureInfo.InvariantCulture,
            $"The body would pass its band before the string arrives: the string wants about {pass.StillWanted.Percent:0.0#} % more "
                + $"{pass.Thickener}, and that thickens too. Base now makes room for it."),
        AdviceReason.StringWouldPass pass => string.Create(CultureInfo.InvariantCulture,
            $"The string stands near the top of its band, and the {pass.StillWanted.Percent:0.0#} % {pass.Thickener} that the body still "
                + $"wants may carry it over. Base now makes room for it."),
        AdviceReason.BaseIsOver { Quantity: Quantity.Body } => $"The {(isOfTwo ? "body" : "pot")} is over, and even the base alone is "
            + $"expected to be above the aim: use a thinner base.",
        AdviceReason.BaseIsOver => "The string is over, and even the base alone is expected to draw a longer one than wanted.",
        AdviceReason.TooMuchBase much when isOfTwo => string.Create(CultureInfo.InvariantCulture,
            $"{Of(much.Why, isOfTwo)} Letting it down would take {much.Base.Grams:0} g of base, more than the pot holds: split it and let "
                + $"down a part."),
        AdviceReason.TooMuchBase much => string.Create(CultureInfo.InvariantCulture, $"The pot is over, and letting it down would take "
            + $"{much.Base.Grams:0} g of base, more than the pot holds: split it and let down a part."),
        AdviceReason.BaseTooSmall small => string.Create(CultureInfo.InvariantCulture, $"The pot is over by less base than the scale's "
            + $"step ({small.Step.Grams:0.###} g) can weigh: use a finer scale."),
        _ => null,
    };

    private static string? GivingUp(AdviceReason why) => why switch
    {
        AdviceReason.FallsWithDose falls => $"{(falls.Quantity == Quantity.Body ? "The body" : "The string")} falls as '{falls.Thickener}' goes "
            + $"in: {string.Join(", ", falls.Values.Select(v => Digits(v, 3).ToString(CultureInfo.InvariantCulture)))} "
            + $"{(falls.Quantity == Quantity.Body ? "mPa·s" : "mm")}. More of it would not help. Causes to look for: the pH, salt, the wrong "
            + $"material, hard stirring that breaks the body down, water that a stock brings in, or a dose beyond the peak of its curve.",
        AdviceReason.BandTooNarrow narrow => string.Create(CultureInfo.InvariantCulture, $"The band, ±{narrow.HalfWidth.Percent:0.#} %, is narrower than the "
            + $"readings can tell: one reading scatters by about {narrow.Repeatability.Percent:0.#} %, and even several on the aim would leave "
            + $"it open whether the pot is in band. It is about there."),
        AdviceReason.IncrementTooSmall small => string.Create(CultureInfo.InvariantCulture, $"The next increment is smaller than the "
            + $"scale's step ({small.Step.Grams:0.###} g): pre-dilute the thickener, or use a finer scale."),
        AdviceReason.LimitInTheWay way => $"The dose limit stands in the way ({way.Limit.Why}): aim lower, or take a stronger thickener "
            + $"or a base with more body.",
        AdviceReason.OutOfReach reach => $"The band is out of reach with '{reach.Thickener}' within its dose limit: aim lower, or take a "
            + $"stronger thickener or a base with more body.",
        AdviceReason.StringOutOfReach reach => string.Create(CultureInfo.InvariantCulture,
            $"Within its dose limit '{reach.Thickener}' is expected to bring the string to {reach.Longest.Millimeters:0.#} mm only: aim "
                + $"at a shorter string, or take a thickener that brings more of it."),
        AdviceReason.NotBoth both => string.Create(CultureInfo.InvariantCulture,
            $"Body and string can't both be had: the string wants {both.StringDose.Percent:0.0#} % '{both.Thickeners.Strings}', which "
                + $"brings the body to about {Three(both.Body)} mPa·s. With the body in band the string reaches about "
                + $"{both.Reached.Millimeters:0.#} mm. Trade: a shorter string, more body, less '{both.Thickeners.Body}' from the start, "
                + $"or a thinner base."),
        AdviceReason.BodyOutOfReach reach => string.Create(CultureInfo.InvariantCulture,
            $"Within the dose limits the body is expected to come up to about {Three(reach.Stiffest)} mPa·s only: aim lower, or take a "
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
            => "String first: what it needs thickens too, so that the body is finished last. " + Bound(chosen),
        AdviceReason.ChosenOfTwo chosen => Bound(chosen),
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, "not a case of the closed set"),
    };

    private static string Known(AdviceReason.Chosen chosen)
    {
        var history = chosen.EarlierRuns switch
        {
            0 => "",
            1 => "One earlier run of this base and thickener helps. ",
            var runs => FormattableString.Invariant($"{runs} earlier runs of this base and thickener help. "),
        };
        return chosen.FewDoses switch
        {
            null => history,
            1 => "One dose read says nothing of the slope yet: what is usual for thickeners decides. ",
            var doses => $"{(doses == 2 ? "Two" : doses.Value.ToString(CultureInfo.InvariantCulture))} doses read are too few to trust "
                + $"the slope far beyond them; what is usual for thickeners decides there. ",
        };
    }

    private static string Bound(AdviceReason.Chosen chosen) => chosen.Bound switch
    {
        ChoiceBound.BestChance => "This dose has the best chance of landing in band; more would be likelier to go past it.",
        ChoiceBound.BodyRisk => string.Create(CultureInfo.InvariantCulture, $"Stopping short keeps the chance of over within "
            + $"{chosen.Risk.Percent:0.##} % ({OneIn(chosen.Risk)})."),
        ChoiceBound.StepCap when chosen.IsOnKnownGround => string.Create(CultureInfo.InvariantCulture,
            $"No single step goes beyond the doses that earlier runs have read, nor beyond {100 * IncrementPolicy.KnownStepCap:0} % of "
                + $"the usual range."),
        ChoiceBound.StepCap => StepCap,
        ChoiceBound.Limit => $"The step ends at the dose limit: {chosen.Limit.Why}.",
        _ => throw new ArgumentOutOfRangeException(nameof(chosen), chosen.Bound, "not a bound of one thickener"),
    };

    private static string Bound(AdviceReason.ChosenOfTwo chosen) => chosen.Bound switch
    {
        ChoiceBound.BestChance => "This dose has the best chance of ending with body and string both in band.",
        ChoiceBound.BodyRisk or ChoiceBound.StringRisk => string.Create(CultureInfo.InvariantCulture,
            $"Stopping short keeps the chance of over, in body or string, within {chosen.Risk.Percent:0.##} % ({OneIn(chosen.Risk)}); the "
                + $"{(chosen.Bound == ChoiceBound.BodyRisk ? "body" : "string")} is the nearer of the two."),
        ChoiceBound.Room => $"Stopping short leaves room for the {chosen.Thickeners.Other} still to come, which moves "
            + $"{(chosen.Quantity == Quantity.Stringiness ? "the string" : "the body")} too.",
        ChoiceBound.StepCap => StepCap,
        ChoiceBound.Limit => $"The step ends at the dose limit of {chosen.Thickeners.This}.",
        _ => throw new ArgumentOutOfRangeException(nameof(chosen), chosen.Bound, "not a bound"),
    };

    private static string StepCap => string.Create(CultureInfo.InvariantCulture, $"No single step goes beyond "
        + $"{100 * IncrementPolicy.StepCap:0} % of the usual range, however far the target.");

    private static string Of(Contradiction what) => what switch
    {
        Contradiction.Unexpected unexpected => $"The last reading is {Apart(unexpected.Ratio)} what the others lead to expect",
        Contradiction.Fell fell => $"The body reads {Apart(fell.Ratio)} what it read before the addition, though thickener went in",
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
