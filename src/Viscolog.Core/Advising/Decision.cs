using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Advising;

/// <summary>Goes from a posterior to one piece of advice.</summary>
internal sealed class Decision
{
    /// <summary>Chance of being over from which on the pot counts as over.</summary>
    private const double OverChance = 0.9;

    /// <summary>Chance of coming up to the band below which a target counts as out of reach.</summary>
    public const double HopelessChance = 0.1;

    /// <summary>Chance of being in band from which on one reading is enough to stop.</summary>
    private const double SureChance = 0.975;

    /// <summary>Chance of being unlike its history from which on a user should hear of it.</summary>
    private const double MaybeUnlike = 0.4;

    /// <summary>Chance of being in band from which on a second reading is cheaper than a dose that may not be needed.</summary>
    private const double MaybeInBand = 0.2;

    /// <summary>Readings of one step after which no further one is asked for.</summary>
    private const int EnoughReadings = 4;

    private readonly StudyRequest request;
    private readonly ViscosityBand band;
    private readonly Posterior posterior;
    private readonly Run run;
    private readonly Thickener thickener;
    private readonly Pot pot;
    private readonly EvidenceStep step;
    private readonly LnEstimate now;
    private readonly DoseLimit limit;
    private readonly List<string> warnings;

    public Decision(StudyRequest request, ViscosityBand band, Posterior posterior)
    {
        (this.request, this.band, this.posterior) = (request, band, posterior);
        run = request.Run;
        thickener = posterior.Evidence.Thickener;
        pot = run.PotNow();
        step = posterior.Evidence.Steps[^1];
        now = posterior.At(pot.DoseOf(thickener.Name));
        limit = DoseLimits.Of(posterior, band);
        warnings = [.. posterior.Evidence.Warnings];
        if (HasHardlyThickened())
        {
            warnings.Add("the thickener has hardly thickened so far: check the pH, the product and the mixing before more goes in");
        }

        var setAside = posterior.ChanceUnlikeHistory.Fraction >= HistorySettings.SurelyUnlike;
        if (setAside)
        {
            warnings.Add("this pot is unlike the earlier runs, which therefore count for nothing: check that base and thickener are those that the run names");
        }

        if (!setAside && posterior.ChanceUnlikeHistory.Fraction >= MaybeUnlike)
        {
            warnings.Add("this pot may be unlike the earlier runs, which therefore count for less: check that base and thickener are those that the run names");
        }

        if (request.History.Length > 0 && posterior.Prior.Runs == 0 && !setAside)
        {
            warnings.Add($"none of the earlier runs is of this base and '{thickener.Name}' with readings at two doses or more; they were left aside");
        }
    }

    private double HalfRepeatability => Settled.Bound(posterior.Evidence.Repeatability);

    /// <summary>Decides.</summary>
    public Advice Decide()
    {
        if (posterior.Evidence.ReadingCount == 0 || (step.Readings.Length == 0 && step.LeftOut > 0))
        {
            return Finish(new BenchAction.Measure(null), step.LeftOut > 0
                ? FormattableString.Invariant($"The pot was read too far from {run.ReferenceTemperatureInForce.Celsius:0.#} °C: bring it within 10 °C of that and read again.")
                : "No body has been read yet: read the pot as it stands before anything goes in.");
        }

        if (posterior.Evidence.LowPh is { } ph)
        {
            return Finish(new BenchAction.GiveUp("Raise the pH first."), FormattableString.Invariant(
                $"At pH {ph:0.0} an alkali-swellable thickener hardly swells, and its curve means nothing (about 8.5 to 9.5 is usual)."));
        }

        if (step.Readings.Length == 0)
        {
            return Finish(new BenchAction.Measure(TimeSpan.FromSeconds(WaitFor(posterior.ChangesIn(step)))), "Nothing has been read since the pot was last changed: stir, let it stand, read.");
        }

        return Cleared(new(posterior, step)) ?? Judged();
    }

    /// <summary>What the last step's readings call for before they can be judged; null where they can.</summary>
    private Advice? Cleared(StepChecks checks)
    {
        if (checks.Falls)
        {
            return Finish(new BenchAction.Measure(null), "The readings of this step fall over time, which is not settling (breakdown under shear, bubbles, temperature): let it rest, stir gently, and read until two agree.");
        }

        if (step.Readings.Length < EnoughReadings && checks.Contradiction() is { } contradiction)
        {
            return Finish(new BenchAction.Measure(null), contradiction + ": stir gently and read again before anything goes in.");
        }

        // A pot that is over while it still builds is over, and no waiting brings a hopeless target nearer.
        if (checks.IsSettled || now.ChanceAbove(band.High.Ln) >= SureChance || HopelessAtLimit())
        {
            return null;
        }

        var repeatability = 100 * posterior.Evidence.Repeatability;
        return Finish(new BenchAction.Wait(TimeSpan.FromSeconds(checks.MoreWait)), FormattableString.Invariant(
            $"It may still build: about {Digits(100 * (Math.Exp(checks.Remaining) - 1))} % is to come, and under {repeatability / 2:0.#} % counts as settled. Two readings 10 s or more apart that agree within {repeatability:0.#} % settle it as well."));
    }

    private Advice Judged()
    {
        var inBand = now.ChanceWithin(band.Low.Ln, band.High.Ln);
        var over = now.ChanceAbove(band.High.Ln);
        if (inBand >= IncrementPolicy.StopChance && inBand < SureChance && step.Readings.Length < 2)
        {
            return Finish(new BenchAction.Measure(null), "It looks in band, but on a single reading: read the same pot once more to be sure.");
        }

        if (inBand >= IncrementPolicy.StopChance)
        {
            return Finish(new BenchAction.Stop(), "The settled body is in band, the reading's own error counted.");
        }

        if (inBand >= 0.5 && step.Readings.Length < EnoughReadings)
        {
            return Finish(new BenchAction.Measure(null), "Probably in band, but the readings so far can't tell well enough: one more reading of the same pot decides.");
        }

        if (inBand >= MaybeInBand && step.Readings.Length < 2)
        {
            return Finish(new BenchAction.Measure(null), "It may be in band already, and one reading can't tell: read the same pot once more before an addition that can't be taken out again.");
        }

        if (over >= OverChance || (over >= 0.5 && step.Readings.Length >= EnoughReadings))
        {
            return Over();
        }

        var choice = IncrementPolicy.Choose(
            posterior, band, pot.DoseOf(thickener.Name).Percent, limit.Dose.Percent, posterior.Evidence.RangeTop, request.Risk.Fraction);
        if (inBand >= 0.5 && (choice is null || choice.BestChance < inBand + 0.02))
        {
            return Finish(new BenchAction.Stop(), "More likely in band than not, and no addition would make it likelier; further readings would change little.");
        }

        if (choice is not null && !HopelessAtLimit())
        {
            return Addition(choice);
        }

        return NoAddition(over);
    }

    private Advice NoAddition(double over)
    {
        if (over > request.Risk.Fraction && !HopelessAtLimit())
        {
            return step.Readings.Length < EnoughReadings
                ? Finish(new BenchAction.Measure(null), "The pot may already be over, so nothing more goes in: one more reading of the same pot decides.")
                : Over();
        }

        var top = thickener.UsualRange.Top;
        var withoutLimit = limit.Dose < top && posterior.ChanceOfReaching(band.Low, top).Fraction >= HopelessChance;
        return Finish(new BenchAction.GiveUp("The target can't be had this way."), withoutLimit
            ? $"The dose limit stands in the way ({limit.Why}): aim lower, or take a stronger thickener or a base with more body."
            : $"The band is out of reach with '{thickener.Name}' within its dose limit: aim lower, or take a stronger thickener or a base with more body.");
    }

    private bool HopelessAtLimit() => posterior.ChanceOfReaching(band.Low, limit.Dose).Fraction < HopelessChance || limit.Dose <= pot.DoseOf(thickener.Name);

    private Advice Addition(Choice choice)
    {
        var thickenerMass = pot.ThickenerToReach(thickener.Name, Dose.FromPercent(choice.DosePercent));
        var scale = run.ScaleStepInForce.Grams;
        var steps = Math.Floor((thickener.PouredFor(thickenerMass).Grams / scale) + 1e-9);
        if (steps < 3)
        {
            warnings.Add("the increment is under three steps of the scale: cut the thickener with water (1:3, say), state the dilution, and weigh that instead");
        }

        if (steps < 1)
        {
            return Finish(TooCoarse(), FormattableString.Invariant(
                $"The next increment is smaller than the scale's step ({scale:0.###} g): pre-dilute the thickener, or use a finer scale."));
        }

        var poured = Mass.FromGrams(Math.Round(steps * scale, 9));
        var dose = pot.Add(thickener, poured).DoseOf(thickener.Name);
        var after = posterior.At(dose);
        var rises = posterior.RisesBetween(pot.DoseOf(thickener.Name), dose);
        var action = new BenchAction.Add(
            poured,
            Dose.FromPercent(dose.Percent - pot.DoseOf(thickener.Name).Percent),
            dose,
            TimeSpan.FromSeconds(WaitFor(rises)));
        return Finish(action, Explanation.Of(choice, posterior, request.Risk, limit), after);
    }

    private Advice Over()
    {
        var dose = LetDownDose();
        if (dose is not { } wanted)
        {
            return Finish(new BenchAction.GiveUp("Take a thinner base."), "The pot is over, and even the base alone is expected to be above the aim: use a thinner base.");
        }

        var scale = run.ScaleStepInForce.Grams;
        var added = Mass.FromGrams(Math.Round(Math.Round(pot.BaseToReach(thickener.Name, wanted).Grams / scale) * scale, 9));
        if (added > pot.Total)
        {
            return Finish(new BenchAction.GiveUp("Split the pot."), FormattableString.Invariant(
                $"The pot is over, and letting it down would take {added.Grams:0} g of base, more than the pot holds: split it and let down a part."));
        }

        if (added.Grams <= 0)
        {
            return Finish(TooCoarse(), FormattableString.Invariant($"The pot is over by less base than the scale's step ({scale:0.###} g) can weigh: use a finer scale."));
        }

        var after = pot.LetDown(added).DoseOf(thickener.Name);
        var expected = posterior.At(after);
        return Finish(
            new BenchAction.LetDown(added, after),
            "The body is over the band and an addition can't be taken out again: base brings the dose back down. Should that be a little too much, thickener can follow in small doses.",
            expected);
    }

    /// <summary>The dose below the present one at which the believed median is at the aim; null where even the base is above it.</summary>
    private Dose? LetDownDose()
    {
        var high = pot.DoseOf(thickener.Name).Percent;
        var low = 0.0;
        if (high <= 0 || posterior.At(Dose.None).Quantile(0.5) > band.Aim.Ln)
        {
            return null;
        }

        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = posterior.At(Dose.FromPercent(middle)).Quantile(0.5) > band.Aim.Ln ? (low, middle) : (middle, high);
        }

        return low > 0 ? Dose.FromPercent(low) : null;
    }

    /// <summary>Whether a dose that ought to show (a quarter of the usual range) has raised the body by no more than readings scatter.</summary>
    private bool HasHardlyThickened()
    {
        var rise = now.Quantile(0.5) - posterior.At(Dose.None).Quantile(0.5);
        return step.Readings.Length > 0
            && step.Dose >= posterior.Evidence.RangeTop / 4
            && posterior.Evidence.Steps[0].Readings.Length > 0
            && rise < 2 * posterior.Evidence.Repeatability;
    }

    private double WaitFor(double[] changes) => BuildUp.WaitUntilBelow(changes, posterior.TimeConstants(), HalfRepeatability);

    private static BenchAction.GiveUp TooCoarse() => new BenchAction.GiveUp("Weigh finer.");

    private static string Digits(double percent) => percent < 10 ? FormattableString.Invariant($"{percent:0.#}") : FormattableString.Invariant($"{percent:0}");

    private static Percentage Chance(double fraction) => Percentage.FromFraction(Math.Clamp(fraction, 0, 1));

    /// <summary>Advice that leaves the pot as it is: its chances are those of now.</summary>
    private Advice Finish(BenchAction action, string why) => Finish(action, why, null);

    private Advice Finish(BenchAction action, string why, LnEstimate? after)
    {
        var judged = after ?? now;
        var inBand = Chance(judged.ChanceWithin(band.Low.Ln, band.High.Ln));
        return new(action, why)
        {
            Quantities =
            [
                new AdvisedQuantity.OfBody(band, posterior.Evidence.ReadingCount == 0 ? null : now.ToEstimate(Study.Level), after?.ToEstimate(Study.Level))
                {
                    ChanceInBand = inBand,
                    ChanceOver = Chance(judged.ChanceAbove(band.High.Ln)),
                },
            ],
            Thickeners = [new(thickener.Name, pot.DoseOf(thickener.Name), pot.ShareOf(thickener.Name), limit)],
            ChanceAllInBand = inBand,
            WhatIf = request.WhatIf is { } poured && posterior.Evidence.ReadingCount > 0 ? WhatIfs.Of(request, poured, band, posterior, limit) : null,
            Warnings = [.. warnings],
            Cautions = Cautions.For(thickener),
        };
    }
}
