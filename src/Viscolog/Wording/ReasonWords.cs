using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Wording;

/// <summary>Why something is advised, and what to change, in sentences.</summary>
internal static class ReasonWords
{
    /// <summary>From here on a chance is told as good as certain.</summary>
    private const double AlmostCertain = 0.95;

    /// <summary>Why, in a sentence or two.</summary>
    public static string Of(Advice advice) => Of(advice.Why, advice.Quantities.Length > 1);

    /// <summary>What to change, in a few words.</summary>
    public static string Of(Remedy remedy) => remedy switch
    {
        Remedy.RaisePh => Say("Raise the pH first."),
        Remedy.ThinnerBase => Say("Use a thinner base."),
        Remedy.LessStringyBase => Say("Use a less stringy base."),
        Remedy.SplitPot => Say("Split the pot."),
        Remedy.WeighFiner => Say("Weigh finer."),
        Remedy.FindCause => Say("Stop adding it: find the cause first."),
        Remedy.WiderBand => Say("Widen the band, or use a method that scatters less."),
        Remedy.AnotherTarget => Say("This target can't be reached this way."),
        Remedy.OneOfTwo => Say("Aim for one of the two."),
        Remedy.Trade => Say("Body and string can't both be reached this way."),
        _ => throw new ArgumentOutOfRangeException(nameof(remedy), remedy, "not a remedy"),
    };

    /// <summary>What the reader of advice must know.</summary>
    public static string Of(AdviceWarning warning) => warning switch
    {
        AdviceWarning.OfEvidence evidence => EvidenceWords.Of(evidence.Warning),
        AdviceWarning.HardlyThickened => Say("the thickener has hardly thickened so far: check the pH, the product and the mixing before "
            + "adding more"),
        AdviceWarning.UnlikeHistory { IsSure: true } => Say("this pot does not behave like the earlier runs, so they are ignored: check "
            + "that base and thickener are the ones the run names"),
        AdviceWarning.UnlikeHistory => Say("this pot may not behave like the earlier runs, so they count for less: check that base and "
            + "thickener are the ones the run names"),
        AdviceWarning.HistoryLeftAside aside => Say($"no earlier run has this base and '{aside.Thickener}' with readings at two doses or "
            + $"more, so none was used"),
        AdviceWarning.PhNotRead missing => Say($"no pH has been read, and '{missing.Thickener}' swells only at the right pH (usually about "
            + $"8.5 to 9.5): read the pH before adding more"),
        AdviceWarning.StockWater stock => Say($"this addition brings {stock.Water.Grams:0.#} g of water into {stock.Pot.Grams:0.#} g: it "
            + $"thins both binder and body; a stronger stock would thin them less"),
        AdviceWarning.RisesWithoutEnd rising
            => Say($"after {Shown.Duration(rising.Stood)} the body still rises ({rising.Rise.Percent:0} % over the second half of that "
                + $"time): unless this is slow swelling, the pot may be drying or forming a skin: cover it, stir, and read again"),
        AdviceWarning.FewScaleSteps => Say("the increment is under three steps of the scale: dilute the thickener with water (1:3, say), "
            + "enter the dilution, and weigh that instead"),
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning, "not a case of the closed set"),
    };

    /// <summary>A chance as a person says it.</summary>
    public static string OneIn(Percentage chance) => chance.Fraction switch
    {
        <= 0.0001 => Say("less than 1 in 10000"),
        >= AlmostCertain => Say("almost certain"),
        >= 0.5 => Say($"{10 * chance.Fraction:0} in 10"),
        _ => Say($"1 in {Digits(1 / chance.Fraction, 2, 1)}"),
    };

    /// <summary>Why a dose is the one to test.</summary>
    public static string Of(TestDose next) => Say($"A reading there teaches most about the whole curve: the uncertainty (as variance) over "
        + $"the usual range is expected to fall by {next.Gain.Percent:0} %. It ignores the target: to bring a pot into band, ask for "
        + $"advice instead.");

    /// <summary>What holds of an addition that was asked about.</summary>
    public static IEnumerable<string> Notes(WhatIf asked)
    {
        yield return asked.ChanceOver <= asked.Risk
            ? Say($"The chance of going over stays within {OneIn(asked.Risk)}, as advice requires.")
            : asked.ChanceOver.Fraction >= AlmostCertain
            ? Say($"Going over is almost certain; advice stays within {OneIn(asked.Risk)}.")
            : Say($"The chance of going over is {OneIn(asked.ChanceOver)}; advice stays within {OneIn(asked.Risk)}.");
        if (asked.BeyondLimit is { } limit)
        {
            yield return Say($"It goes beyond the dose limit: {LimitWords.Of(limit)}.");
        }

        if (asked.MostAtOnce is { } most)
        {
            yield return Say($"It is more than advice adds in one step ({most.Percent:0} % of the usual range).");
        }
    }

    private static string Of(AdviceReason why, bool isOfTwo)
        => Reading(why, isOfTwo) ?? Judging(why, isOfTwo) ?? LettingDown(why, isOfTwo) ?? GivingUp(why) ?? Adding(why);

    private static string? Reading(AdviceReason why, bool isOfTwo) => why switch
    {
        AdviceReason.TooFarFromReference far => Say($"The pot was too far from {far.Reference.Celsius:0.#} °C when it was read: bring it "
            + $"within 10 °C and read again."),
        AdviceReason.NothingRead => isOfTwo
            ? Say("Nothing has been read yet: read the body of the pot as it is, and draw a string, before adding anything.")
            : Say("No body has been read yet: read the pot as it is before adding anything."),
        AdviceReason.NotReadSinceChange => isOfTwo
            ? Say("Nothing has been read since the pot was last changed: stir, let it stand, read the body and draw a string.")
            : Say("Nothing has been read since the pot was last changed: stir, let it stand, read."),
        AdviceReason.StringNotRead { Ever: false } => Say("No string has been read yet, and advice on the string needs one: lift a stick "
            + "from the pot and note the length in mm at which the string breaks (string_mm)."),
        AdviceReason.StringNotRead => Say("The string has not been read since the pot was last changed: lift a stick and note the length "
            + "in mm at which the string breaks."),
        AdviceReason.LowPh low => Say($"At pH {low.Ph:0.0} an alkali-swellable thickener hardly swells, so its curve means nothing (about "
            + $"8.5 to 9.5 is usual)."),
        AdviceReason.Falls => Say("The readings of this step fall over time, which is not settling (breakdown under shear, bubbles, "
            + "temperature): let it rest, stir gently, and read until two agree."),
        AdviceReason.LumpsSeen => Say("Lumps were seen: stir until they are gone, let the pot stand, read again and note what you see. "
            + "What was added still counts."),
        AdviceReason.Contradicted contradicted => Say($"{Of(contradicted.What)}{Of(contradicted.What.Blunder)}: stir gently and read again "
            + $"before adding anything."),
        AdviceReason.StillBuilds builds => Say($"It may still be building: about {Rise(100 * builds.ToCome)} % is expected, and it counts "
            + $"as settled below {builds.Repeatability.Percent / 2:0.#} %, or when two readings agree within "
            + $"{builds.Repeatability.Percent:0.#} % and the time between them is at least as long as the pot had stood before the first."),
        _ => null,
    };

    private static string? Judging(AdviceReason why, bool isOfTwo) => why switch
    {
        AdviceReason.InBandOnOneReading => Say("It looks in band, but on a single reading: read the same pot once more to be sure."),
        AdviceReason.ProbablyInBand => Say("Probably in band, but the readings so far don't settle it: one more reading of the same pot "
            + "will."),
        AdviceReason.MaybeInBand => Say("It may be in band already, and one reading is not enough to tell: read the same pot once more "
            + "before adding what can't be taken out."),
        AdviceReason.InBand => isOfTwo
            ? Say("Body and string are both in band, even allowing for reading error.")
            : Say("The settled body is in band, even allowing for reading error."),
        AdviceReason.LikelyInBand => isOfTwo
            ? Say("More likely in band than not, body and string, and no addition would improve the odds; further readings would change "
                + "little.")
            : Say("More likely in band than not, and no addition would improve the odds; further readings would change little."),
        AdviceReason.MaybeOver => Say("The pot may already be over, so add nothing more: one more reading of the same pot will settle it."),
        AdviceReason.BodyDoubtful => Say("The readings so far leave the body too uncertain: read the same pot once more to decide."),
        AdviceReason.StringDoubtful doubtful => Say($"A single string reading is good only to {doubtful.Repeatability.Percent:0} %: draw "
            + $"one more from the same pot to decide."),
        AdviceReason.StringUntold => Say("The readings so far leave the string too uncertain: draw one more from the same pot."),
        AdviceReason.StringKeepsAdditionSmall small => Say($"A single string reading is good only to {small.Repeatability.Percent:0} %, "
            + $"and that alone keeps the next addition small: draw one more from the same pot."),
        AdviceReason.BodyMayPass => Say("The body seems likely to pass its band before the string reaches its own: draw one more string "
            + "before adding base."),
        _ => null,
    };

    private static string? LettingDown(AdviceReason why, bool isOfTwo) => why switch
    {
        AdviceReason.Over { Quantity: Quantity.Body } when !isOfTwo
            => Say("The body is over the band and an addition can't be taken out again: base brings the dose back down. If that turns out "
                + "a little too much, add thickener in small doses."),
        AdviceReason.Over { Quantity: Quantity.Body }
            => Say("The body is over the band and an addition can't be taken out again: base brings both doses back down. Make up what the "
                + "string then lacks in small doses."),
        AdviceReason.Over => Say("The string is over its band and an addition can't be taken out again: base brings both doses back down. "
            + "Make up what the body then lacks in small doses."),
        AdviceReason.BodyWouldPass pass => Say($"The body would pass its band before the string reaches its own: the string needs about "
            + $"{pass.StillWanted.Percent:0.0#} % more {pass.Thickener}, which thickens too. Adding base now makes room for it."),
        AdviceReason.StringWouldPass pass => Say($"The string is near the top of its band, and the {pass.StillWanted.Percent:0.0#} % "
            + $"{pass.Thickener} that the body still needs may take it over. Adding base now makes room for it."),
        AdviceReason.BaseIsOver { Quantity: Quantity.Body } => isOfTwo
            ? Say("The body is over, and even the base alone is expected to be above the target: use a thinner base.")
            : Say("The pot is over, and even the base alone is expected to be above the target: use a thinner base."),
        AdviceReason.BaseIsOver => Say("The string is over, and even the base alone is expected to draw a longer string than wanted."),
        AdviceReason.TooMuchBase much when isOfTwo => Say($"{Of(much.Why, isOfTwo)} Letting it down would take {much.Base.Grams:0} g of "
            + $"base, more than there is in the pot: split it and let down one part."),
        AdviceReason.TooMuchBase much => Say($"The pot is over, and letting it down would take {much.Base.Grams:0} g of base, more than "
            + $"there is in the pot: split it and let down one part."),
        AdviceReason.BaseTooSmall small => Say($"Correcting this takes less base than the scale can weigh (step {small.Step.Grams:0.###} "
            + $"g): use a finer scale."),
        _ => null,
    };

    private static string? GivingUp(AdviceReason why) => why switch
    {
        AdviceReason.FallsWithDose falls => (falls.Quantity == Quantity.Body
            ? Say($"The body falls as '{falls.Thickener}' is added: {Values(falls)} mPa·s.")
            : Say($"The string falls as '{falls.Thickener}' is added: {Values(falls)} mm."))
            + Say(" Adding more would not help. Possible causes: pH, salt, the wrong material, hard stirring that breaks the body down, "
                + "water from a stock, or a dose beyond the peak of the curve."),
        AdviceReason.BandTooNarrow narrow => Say($"The band, ±{narrow.HalfWidth.Percent:0.#} %, is narrower than the readings can resolve: "
            + $"one reading scatters by about {narrow.Repeatability.Percent:0.#} %, and even several readings exactly on target would not "
            + $"show that the pot is in band. It is about there."),
        AdviceReason.IncrementTooSmall small => Say($"The next increment is smaller than the scale's step ({small.Step.Grams:0.###} g): "
            + $"pre-dilute the thickener, or use a finer scale."),
        AdviceReason.LimitInTheWay way => Say($"The dose limit prevents it ({LimitWords.Of(way.Limit)}): aim lower, or use a stronger "
            + $"thickener or a base with more body."),
        AdviceReason.OutOfReach reach => Say($"The band is out of reach with '{reach.Thickener}' within its dose limit: aim lower, or use "
            + $"a stronger thickener or a base with more body."),
        AdviceReason.StringOutOfReach reach => Say($"Within its dose limit '{reach.Thickener}' is expected to bring the string to only "
            + $"{reach.Longest.Millimeters:0.#} mm: aim for a shorter string, or use a thickener that gives more."),
        AdviceReason.NotBoth both => Say($"Body and string can't both be reached: the string needs {both.StringDose.Percent:0.0#} % "
            + $"'{both.Thickeners.Strings}', which brings the body to about {Three(both.Body)} mPa·s. With the body in band the string "
            + $"reaches about {both.Reached.Millimeters:0.#} mm. Choose: a shorter string, more body, less '{both.Thickeners.Body}' from "
            + $"the start, or a thinner base."),
        AdviceReason.BodyOutOfReach reach => Say($"Within the dose limits the body is expected to reach only about {Three(reach.Stiffest)} "
            + $"mPa·s: aim lower, or use a stronger thickener than '{reach.Thickener}' or a base with more body."),
        AdviceReason.NothingSafe => Say("The readings leave no addition whose chance of going over is small enough: repeat the readings, "
            + "or accept a greater risk."),
        _ => null,
    };

    private static string Values(AdviceReason.FallsWithDose falls)
        => string.Join(Say(", ", "numbers"), falls.Values.Select(v => Digits(v, 3).ToString(Numbers)));

    private static string Adding(AdviceReason why) => why switch
    {
        AdviceReason.Chosen chosen => Known(chosen) + Bound(chosen)
            + (chosen.IsShapeOpen ? Say(" Several shapes of curve still fit the readings.") : ""),
        AdviceReason.ChosenOfTwo { IsStringFirst: true } chosen
            => Say("String first: what the string needs also thickens, so the body is finished last. ") + Bound(chosen),
        AdviceReason.ChosenOfTwo chosen => Bound(chosen),
        _ => throw new ArgumentOutOfRangeException(nameof(why), why, "not a case of the closed set"),
    };

    private static string Known(AdviceReason.Chosen chosen)
    {
        var history = chosen.EarlierRuns switch
        {
            0 => "",
            1 => Say("One earlier run of this base and thickener was used. "),
            var runs => Say($"{runs} earlier runs of this base and thickener were used. "),
        };
        return chosen.FewDoses switch
        {
            null => history,
            1 => Say("One dose says nothing about the slope yet, so the usual behaviour of thickeners decides. "),
            2 => Say("Two doses are too few to trust the slope far beyond them; there the usual behaviour of thickeners decides. "),
            var doses => Say($"{doses} doses are too few to trust the slope far beyond them; there the usual behaviour of thickeners "
                + $"decides. "),
        };
    }

    private static string Bound(AdviceReason.Chosen chosen) => chosen.Bound switch
    {
        ChoiceBound.BestChance => Say("This dose is the most likely to land in band; more would be more likely to overshoot."),
        ChoiceBound.BodyRisk => Say($"Stopping here keeps the chance of going over within {chosen.Risk.Percent:0.##} % "
            + $"({OneIn(chosen.Risk)})."),
        ChoiceBound.StepCap when chosen.IsOnKnownGround => Say($"No single step exceeds the doses that earlier runs have read, nor "
            + $"{100 * IncrementPolicy.KnownStepCap:0} % of the usual range."),
        ChoiceBound.StepCap => StepCap,
        ChoiceBound.Limit => Say($"The step ends at the dose limit: {LimitWords.Of(chosen.Limit)}."),
        _ => throw new ArgumentOutOfRangeException(nameof(chosen), chosen.Bound, "not a bound of one thickener"),
    };

    private static string Bound(AdviceReason.ChosenOfTwo chosen) => chosen.Bound switch
    {
        ChoiceBound.BestChance => Say("This dose has the best chance of ending with body and string both in band."),
        ChoiceBound.BodyRisk => Say($"Stopping here keeps the chance of going over, in body or string, within {chosen.Risk.Percent:0.##} % "
            + $"({OneIn(chosen.Risk)}); the body is the closer of the two."),
        ChoiceBound.StringRisk => Say($"Stopping here keeps the chance of going over, in body or string, within {chosen.Risk.Percent:0.##} "
            + $"% ({OneIn(chosen.Risk)}); the string is the closer of the two."),
        ChoiceBound.Room when chosen.Quantity == Quantity.Stringiness
            => Say($"Stopping here leaves room for the {chosen.Thickeners.Other} still to come, which changes the string too."),
        ChoiceBound.Room => Say($"Stopping here leaves room for the {chosen.Thickeners.Other} still to come, which changes the body too."),
        ChoiceBound.StepCap => StepCap,
        ChoiceBound.Limit => Say($"The step ends at the dose limit of {chosen.Thickeners.This}."),
        _ => throw new ArgumentOutOfRangeException(nameof(chosen), chosen.Bound, "not a bound"),
    };

    private static string StepCap => Say($"No single step exceeds {100 * IncrementPolicy.StepCap:0} % of the usual range, however far off "
        + $"the target is.");

    private static string Of(Contradiction what) => what switch
    {
        Contradiction.Unexpected unexpected => Say($"The last reading is {Apart(unexpected.Ratio)} what the others suggest"),
        Contradiction.Fell fell => Say($"The body reads {Apart(fell.Ratio)} what it read before, though thickener was added"),
        Contradiction.Jumped jumped => Say($"The body reads {Apart(jumped.Ratio)} what it read before so small an addition"),
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, "not a case of the closed set"),
    };

    /// <summary>A reading that nothing led to expect, without a full stop.</summary>
    public static string Of(Surprise surprise) => Say($"{Apart(surprise.Ratio)} what was expected{Of(surprise.Blunder)}");

    /// <summary>What was perhaps written down wrongly, in brackets.</summary>
    public static string Of(Blunder blunder) => blunder switch
    {
        Blunder.DigitTooMany => Say(" (a digit too many?)"),
        Blunder.DigitTooFew => Say(" (a digit too few?)"),
        Blunder.OtherUnit => Say(" (Pa·s for mPa·s?)"),
        _ => "",
    };

    private static string Apart(double ratio) => ratio switch
    {
        >= 3 => Say($"{TwoDigits(ratio)} times"),
        <= 0.2 => Say($"1/{TwoDigits(1 / ratio)} of"),
        >= 1 => Say($"{100 * (ratio - 1):0} % above"),
        _ => Say($"{100 * (1 - ratio):0} % below"),
    };

    private static string TwoDigits(double value)
    {
        var grain = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return Shown.Number(Math.Round(value / grain) * grain);
    }

    private static string Rise(double percent) => percent.ToString(percent < 10 ? "0.#" : "0", Numbers);

    private static double Three(Viscosity body) => Digits(body.MilliPascalSeconds, 3);

    private static double Digits(double value, int digits, double least = 0)
    {
        var grain = Math.Max(least, Math.Pow(10, Math.Floor(Math.Log10(value)) - digits + 1));
        return Math.Round(value / grain) * grain;
    }
}
