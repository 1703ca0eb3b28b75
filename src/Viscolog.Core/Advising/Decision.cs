using Viscolog.Core.Curves;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Advising;

/// <summary>Goes from a belief to one piece of advice.</summary>
internal sealed class Decision
{
    /// <summary>Below this pH an alkali-swellable thickener's curve means nothing (from memory, H1 trade limits: activation at 6.5 to 7.5).</summary>
    private const double LeastPh = 7.5;

    /// <summary>Chance of being over from which on the pot counts as over.</summary>
    private const double OverChance = 0.9;

    /// <summary>Chance of coming up to the band below which a target counts as out of reach.</summary>
    public const double HopelessChance = 0.05;

    /// <summary>Chance of being in band from which on one reading is enough to stop.</summary>
    private const double SureChance = 0.975;

    /// <summary>Readings of one step after which no further one is asked for.</summary>
    private const int EnoughReadings = 4;

    private readonly AdviceRequest request;
    private readonly ViscosityBand band;
    private readonly Belief belief;
    private readonly Run run;
    private readonly Thickener thickener;
    private readonly Pot pot;
    private readonly EvidenceStep step;
    private readonly LnEstimate now;
    private readonly DoseLimit limit;
    private readonly List<string> warnings;

    public Decision(AdviceRequest request, ViscosityBand band, Belief belief)
    {
        (this.request, this.band, this.belief) = (request, band, belief);
        run = request.Run;
        thickener = belief.Evidence.Thickener;
        pot = run.PotNow();
        step = belief.Evidence.Steps[^1];
        now = belief.At(pot.DoseOf(thickener.Name));
        limit = DoseLimits.Of(belief, band);
        warnings = [.. belief.Evidence.Warnings];
        if (request.History.Length > 0 && belief.Prior.Runs == 0)
        {
            warnings.Add($"none of the earlier runs is of this base and '{thickener.Name}' with readings at two doses or more; they were left aside");
        }
    }

    private double HalfRepeatability => belief.Evidence.Repeatability / 2;

    /// <summary>Decides.</summary>
    public Advice Decide()
    {
        if (belief.Evidence.ReadingCount == 0)
        {
            return Finish(new BenchAction.Measure(null), "No body has been read yet: read the pot as it stands before anything goes in.");
        }

        if (thickener.Chemistry == ThickenerChemistry.AlkaliSwellable && LastPh() is { } ph && ph < LeastPh)
        {
            return Finish(new BenchAction.GiveUp(), FormattableString.Invariant(
                $"Raise the pH first: at {ph:0.0} an alkali-swellable thickener hardly swells, and its curve means nothing (about 8.5 to 9.5 is usual)."));
        }

        if (step.Readings.Length == 0)
        {
            return Finish(new BenchAction.Measure(TimeSpan.FromSeconds(WaitFor(belief.ChangesIn(step)))), "Nothing has been read since the last addition: stir, let it stand, read.");
        }

        return Unsettled() ?? Contradiction() ?? Judged();
    }

    private Advice? Unsettled()
    {
        if (step.Place == 0 || double.IsInfinity(step.Readings[^1].WaitSeconds) || TwoAgree())
        {
            return null;
        }

        var stood = step.Readings[^1].WaitSeconds;
        var times = belief.TimeConstants();
        var changes = belief.ChangesIn(step);
        for (var i = 0; i < changes.Length; i++)
        {
            changes[i] *= BuildUp.Remaining(stood, times[i]);
        }

        if (Falls())
        {
            warnings.Add("the readings of this step fall over time; that is not settling (breakdown under shear, bubbles, temperature)");
        }

        var remaining = BuildUp.ExpectedRemaining(changes, times, 0);
        if (remaining < HalfRepeatability || stood >= BuildUp.LongestWaitSeconds)
        {
            return null;
        }

        // Certainty about the band needs no settled value: a pot that is over now and still builds is over.
        var more = BuildUp.WaitUntilBelow(changes, times, HalfRepeatability);
        return Finish(new BenchAction.Wait(TimeSpan.FromSeconds(more)), FormattableString.Invariant(
            $"It has not settled: the body is expected to change by a further {100 * (Math.Exp(remaining) - 1):0} %, while repeat readings scatter by {100 * belief.Evidence.Repeatability:0.#} %."));
    }

    private Advice? Contradiction()
    {
        var last = step.Readings[^1];
        var expected = belief.At(step, last.WaitSeconds);
        var deviation = last.Ln - expected.Quantile(0.5);
        var noise = belief.Evidence.Repeatability * belief.Evidence.Repeatability;
        if (step.Readings.Length >= EnoughReadings || CurveFilter.SlipChance(deviation, 2 * noise) < 0.5)
        {
            return null;
        }

        return Finish(new BenchAction.Measure(null), FormattableString.Invariant(
            $"The last reading is {100 * (Math.Exp(Math.Abs(deviation)) - 1):0} % {(deviation > 0 ? "above" : "below")} what the others lead to expect: stir gently and read again before anything goes in."));
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

        if (over >= OverChance || (over >= 0.5 && step.Readings.Length >= EnoughReadings))
        {
            return Over();
        }

        var choice = IncrementPolicy.Choose(
            belief, band, pot.DoseOf(thickener.Name).Percent, limit.Dose.Percent, belief.Evidence.RangeTop, request.Risk.Fraction);
        if (inBand >= 0.5 && (choice is null || choice.BestChance < inBand + 0.02))
        {
            return step.Readings.Length < EnoughReadings
                ? Finish(new BenchAction.Measure(null), "Probably in band, but the readings so far can't tell well enough: one more reading of the same pot decides.")
                : Finish(new BenchAction.Stop(), "More likely in band than not, and no addition would make it likelier; further readings would change little.");
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

        return Finish(new BenchAction.GiveUp(), $"The target can't be had with '{thickener.Name}' within its dose limit: aim lower, or take a stronger thickener or a base with more body.");
    }

    private bool HopelessAtLimit() => belief.ChanceOfReaching(band.Low, limit.Dose).Fraction < HopelessChance || limit.Dose <= pot.DoseOf(thickener.Name);

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
            return Finish(new BenchAction.GiveUp(), FormattableString.Invariant(
                $"The next increment is smaller than the scale's step ({scale:0.###} g): pre-dilute the thickener, or use a finer scale."));
        }

        var poured = Mass.FromGrams(Math.Round(steps * scale, 9));
        var dose = pot.Add(thickener, poured).DoseOf(thickener.Name);
        var after = belief.At(dose);
        var rises = belief.RisesBetween(pot.DoseOf(thickener.Name), dose);
        var action = new BenchAction.Add(
            poured,
            Dose.FromPercent(dose.Percent - pot.DoseOf(thickener.Name).Percent),
            dose,
            TimeSpan.FromSeconds(WaitFor(rises)),
            after.ToEstimate(Advisor.Level));
        return Finish(action, Explanation.Of(choice, belief, request.Risk, limit), after);
    }

    private Advice Over()
    {
        var dose = LetDownDose();
        if (dose is not { } wanted)
        {
            return Finish(new BenchAction.GiveUp(), "The pot is over, and even the base alone is expected to be above the aim: use a thinner base.");
        }

        var scale = run.ScaleStepInForce.Grams;
        var added = Mass.FromGrams(Math.Round(Math.Round(pot.BaseToReach(thickener.Name, wanted).Grams / scale) * scale, 9));
        if (added > pot.Total)
        {
            return Finish(new BenchAction.GiveUp(), FormattableString.Invariant(
                $"The pot is over, and letting it down would take {added.Grams:0} g of base, more than the pot holds: split it and let down a part."));
        }

        var expected = belief.At(wanted);
        return Finish(
            new BenchAction.LetDown(added, wanted, expected.ToEstimate(Advisor.Level)),
            "The body is over the band and an addition can't be taken out again: base brings the dose back down.",
            expected);
    }

    /// <summary>The dose below the present one at which the believed median is at the aim; null where even the base is above it.</summary>
    private Dose? LetDownDose()
    {
        var high = pot.DoseOf(thickener.Name).Percent;
        var low = 0.0;
        if (high <= 0 || belief.At(Dose.None).Quantile(0.5) > band.Aim.Ln)
        {
            return null;
        }

        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = belief.At(Dose.FromPercent(middle)).Quantile(0.5) > band.Aim.Ln ? (low, middle) : (middle, high);
        }

        return low > 0 ? Dose.FromPercent(low) : null;
    }

    private double WaitFor(double[] changes) => BuildUp.WaitUntilBelow(changes, belief.TimeConstants(), HalfRepeatability);

    private bool TwoAgree()
    {
        if (step.Readings.Length < 2)
        {
            return false;
        }

        var (before, last) = (step.Readings[^2], step.Readings[^1]);
        return last.WaitSeconds - before.WaitSeconds >= BuildUp.LeastWaitSeconds && Math.Abs(last.Ln - before.Ln) <= belief.Evidence.Repeatability;
    }

    private bool Falls() => step.Readings.Length >= 2 && step.Readings[0].Ln - step.Readings[^1].Ln > 2 * Math.Sqrt(2) * belief.Evidence.Repeatability;

    private double? LastPh() => run.Entries
        .Where(e => e.Counts)
        .OfType<Entry.Measured>()
        .Select(m => m.Reading.Acidity?.Ph)
        .LastOrDefault(p => p is not null);

    private static Percentage Chance(double fraction) => Percentage.FromFraction(Math.Clamp(fraction, 0, 1));

    /// <summary>Advice that leaves the pot as it is: its chances are those of now.</summary>
    private Advice Finish(BenchAction action, string why) => Finish(action, why, now);

    private Advice Finish(BenchAction action, string why, LnEstimate judged) => new(action, why)
    {
        Thickener = thickener.Name,
        DoseNow = pot.DoseOf(thickener.Name),
        ShareNow = pot.ShareOf(thickener.Name),
        Band = band,
        Now = belief.Evidence.ReadingCount == 0 ? null : now.ToEstimate(Advisor.Level),
        ChanceInBand = Chance(judged.ChanceWithin(band.Low.Ln, band.High.Ln)),
        ChanceOver = Chance(judged.ChanceAbove(band.High.Ln)),
        Limit = limit,
        Warnings = [.. warnings],
        Cautions = Cautions.For(thickener),
    };
}
