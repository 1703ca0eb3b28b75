using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Advising;

/// <summary>Goes from a posterior of two thickeners to one piece of advice.</summary>
internal sealed class PairDecision
{
    /// <summary>Chance that both are in band from which on it is time to stop.</summary>
    private const double StopChance = 0.76;

    /// <summary>An addition that covers less of its way than this, in half widths of the band, is not worth making while a reading may free a larger one.</summary>
    private const double SmallGain = 2;

    /// <summary>An addition that covers less than this is none.</summary>
    private const double NoGain = 0.1;

    /// <summary>Chance of being over from which on the pot counts as over.</summary>
    private const double OverChance = 0.9;

    /// <summary>Readings of body in one step after which no further one is asked for.</summary>
    private const int EnoughBodies = 3;

    /// <summary>Readings of string in one step before base is advised on their account.</summary>
    private const int StringsBeforeBase = 3;

    /// <summary>Readings of string in one step after which no further one is asked for.</summary>
    private const int EnoughStrings = 6;

    private readonly StudyRequest request;
    private readonly PairSituation at;
    private readonly Posterior posterior;
    private readonly Run run;
    private readonly Pot pot;
    private readonly EvidenceStep step;
    private readonly PairRoles roles;
    private readonly PairChances now;
    private readonly List<string> warnings;
    private PairPolicy? policy;

    public PairDecision(StudyRequest request, ViscosityBand band, StringBand strings, Posterior posterior)
    {
        (this.request, this.posterior) = (request, posterior);
        run = request.Run;
        pot = run.PotNow();
        roles = posterior.Evidence.Roles;
        step = posterior.Evidence.Steps[^1];
        at = new(posterior, band, strings, pot);
        now = at.At(at.BodyNow, at.StringNow);
        warnings = [.. posterior.Evidence.Warnings];
    }

    /// <summary>The risk of one addition: a pot of two thickeners takes more of them than a pot of one.</summary>
    private Percentage Risk => Percentage.FromFraction(PairPolicy.RiskOfOne * request.Risk.Fraction);

    private PairPolicy Policy => policy ??= new(at, Risk.Fraction);

    private bool BodyReadOften => step.Readings.Length >= EnoughBodies;

    private bool StringReadOften => step.Strings.Length >= EnoughStrings;

    /// <summary>Decides.</summary>
    public Advice Decide()
    {
        if (posterior.Evidence.LowPh is { } ph)
        {
            return Stay(new BenchAction.GiveUp("Raise the pH first."), FormattableString.Invariant(
                $"At pH {ph:0.0} an alkali-swellable thickener hardly swells, and its curve means nothing (about 8.5 to 9.5 is usual)."));
        }

        return Unread() ?? Unsettled() ?? Judged();
    }

    private Advice? Unread()
    {
        var (bodyRead, stringRead) = (step.Readings.Length > 0, step.Strings.Length > 0);
        if (!bodyRead && step.LeftOut > 0)
        {
            return Stay(new BenchAction.Measure(null), FormattableString.Invariant(
                $"The pot was read too far from {run.ReferenceTemperatureInForce.Celsius:0.#} °C: bring it within 10 °C of that and read again."));
        }

        if (!bodyRead)
        {
            var first = posterior.Evidence.ReadingCount == 0;
            TimeSpan? standing = first ? null : TimeSpan.FromSeconds(WaitFor(posterior.ChangesIn(step)));
            return Stay(new BenchAction.Measure(standing), first
                ? "Nothing has been read yet: read the body of the pot as it stands, and draw a string, before anything goes in."
                : "Nothing has been read since the pot was last changed: stir, let it stand, read the body and draw a string.");
        }

        return stringRead ? null : Stay(new BenchAction.Measure(null), posterior.Evidence.StringCount == 0
            ? "No string has been read yet, and advice on the string rests on readings of it: lift a stick from the pot and note in mm where its string breaks (string_mm)."
            : "The string has not been read since the pot was last changed: lift a stick and note in mm where its string breaks.", true);
    }

    /// <summary>What the last step's body readings call for before they can be judged; null where they can.</summary>
    private Advice? Unsettled()
    {
        var checks = new StepChecks(posterior, step);
        if (checks.Falls)
        {
            return Stay(new BenchAction.Measure(null), "The readings of this step fall over time, which is not settling (breakdown under shear, bubbles, temperature): let it rest, stir gently, and read until two agree.");
        }

        if (!BodyReadOften && checks.Contradiction() is { } contradiction)
        {
            return Stay(new BenchAction.Measure(null), contradiction + ": stir gently and read again before anything goes in.");
        }

        if (checks.IsSettled || now.BodyOver >= OverChance)
        {
            return null;
        }

        var repeatability = 100 * posterior.Evidence.Repeatability;
        return Stay(new BenchAction.Wait(TimeSpan.FromSeconds(checks.MoreWait)), FormattableString.Invariant(
            $"It may still build: about {100 * (Math.Exp(checks.Remaining) - 1):0} % is to come, and under {repeatability / 2:0.#} % counts as settled. Two readings 10 s or more apart that agree within {repeatability:0.#} % settle it as well."));
    }

    private Advice Judged()
    {
        if (now.Both >= StopChance)
        {
            return Stay(new BenchAction.Stop(), "Body and string are both in band, the errors of the readings counted.");
        }

        if (now.BodyOver >= OverChance || (now.BodyOver >= 0.5 && BodyReadOften))
        {
            return new PairLetDown(at, pot, run).ForBody() is { } down ? LetDown(down) : Stay(new BenchAction.GiveUp("Take a thinner base."), "The body is over, and even the base alone is expected to be above the aim: use a thinner base.");
        }

        if (now.StringOver >= OverChance || (now.StringOver >= 0.5 && StringReadOften))
        {
            return new PairLetDown(at, pot, run).ForString() is { } down ? LetDown(down) : Stay(new BenchAction.GiveUp("Take a base with less string."), "The string is over, and even the base alone is expected to draw a longer one than wanted.");
        }

        var choice = Policy.Choose();
        if (now.Both >= 0.4 && (choice is null || choice.BestBoth < now.Both + 0.02))
        {
            return Repeat() ?? (now.Both >= 0.5
                ? Stay(new BenchAction.Stop(), "More likely in band than not, body and string, and no addition would make it likelier; further readings would change little.")
                : NoHeadroom() ?? Stuck());
        }

        return OutOfRoom() ?? (choice is null || IsNegligible(choice) ? Repeat() ?? NoHeadroom() ?? Stuck() : RepeatInstead(choice) ?? Addition(choice));
    }

    /// <summary>One more reading of whatever is less sure; null where both were read often enough.</summary>
    private Advice? Repeat()
    {
        var doubtfulString = now.StringIn <= now.BodyIn;
        if (doubtfulString && !StringReadOften)
        {
            return Stay(new BenchAction.Measure(null), FormattableString.Invariant(
                $"One reading of a string is good to {100 * posterior.Evidence.StringRepeatability:0} % only: draw one more from the same pot; it decides."), true);
        }

        if (!BodyReadOften)
        {
            return Stay(new BenchAction.Measure(null), "The body can't be told well enough from the readings so far: read the same pot once more; it decides.");
        }

        return StringReadOften ? null : Stay(new BenchAction.Measure(null), "The string can't be told well enough from the readings so far: draw one more from the same pot.", true);
    }

    private bool IsNegligible(PairChoice choice) => choice.Bound != PairBound.BestChance && Policy.Gain(choice) < NoGain;

    /// <summary>A reading in place of an addition that would be small only because the string is not known well enough.</summary>
    private Advice? RepeatInstead(PairChoice choice)
    {
        var boundByString = choice.Bound == PairBound.StringRisk || (choice.Bound == PairBound.Room && choice.IsString);
        return boundByString && !StringReadOften && Policy.Gain(choice) < SmallGain
            ? Stay(new BenchAction.Measure(null), FormattableString.Invariant(
                $"One reading of a string is good to {100 * posterior.Evidence.StringRepeatability:0} % only, and that alone keeps the next addition small: draw one more from the same pot."), true)
            : null;
    }

    /// <summary>The body would pass before the string arrives: base has to go in, the sooner the less.</summary>
    private Advice? OutOfRoom()
    {
        if (now.StringIn + now.StringOver >= 0.5 || at.BodyOver(at.BodyNow, at.StringDoseWanted(at.BodyNow, 0.5)) < 0.5)
        {
            return null;
        }

        if (step.Strings.Length < StringsBeforeBase)
        {
            return Stay(new BenchAction.Measure(null), "It looks as if the body would pass its band before the string arrives: draw one more string before base goes in.", true);
        }

        return new PairLetDown(at, pot, run).ForRoom(Policy.StringEnd) is { } down
            ? LetDown(down)
            : Stay(new BenchAction.GiveUp("Aim for one of the two."), PairTrade.Of(at, roles));
    }

    /// <summary>The string stands so high that no body thickener can follow: base makes room for it.</summary>
    private Advice? NoHeadroom() => now.BodyIn + now.BodyOver < 0.5 && at.StringOver(Policy.BodyEnd, at.StringNow) > request.Risk.Fraction
        && new PairLetDown(at, pot, run).ForHeadroom(Policy.BodyEnd) is { } down
            ? LetDown(down)
            : null;

    private Advice Stuck() => Stay(new BenchAction.GiveUp("Body and string can't both be had this way."), PairTrade.Of(at, roles));

    private Advice Addition(PairChoice choice)
    {
        var thickener = choice.IsString ? roles.StringThickener : roles.BodyThickener;
        var mass = pot.ThickenerToReach(thickener.Name, Dose.FromPercent(choice.DosePercent));
        var scale = run.ScaleStepInForce.Grams;
        var steps = Math.Floor((thickener.PouredFor(mass).Grams / scale) + 1e-9);
        if (steps < 3)
        {
            warnings.Add("the increment is under three steps of the scale: cut the thickener with water (1:3, say), state the dilution, and weigh that instead");
        }

        if (steps < 1)
        {
            return Repeat() ?? Stay(new BenchAction.GiveUp("Weigh finer."), FormattableString.Invariant(
                $"The next increment is smaller than the scale's step ({scale:0.###} g): pre-dilute the thickener, or use a finer scale."));
        }

        var poured = Mass.FromGrams(Math.Round(steps * scale, 9));
        var (before, after) = (pot.DoseOf(thickener.Name), pot.Add(thickener, poured).DoseOf(thickener.Name));
        var place = choice.IsString ? (Body: at.BodyNow, String: after.Percent) : (Body: after.Percent, String: at.StringNow);
        var rises = posterior.RisesBetween(Doses.FromPercent(at.BodyNow, at.StringNow), Doses.FromPercent(place.Body, place.String));
        var action = new BenchAction.Add(
            poured,
            Dose.FromPercent(after.Percent - before.Percent),
            after,
            TimeSpan.FromSeconds(WaitFor(rises)));
        return Finish(action, PairExplanation.Of(choice, at, Policy, Risk), thickener, place.Body, place.String, PairPlans.Of(Policy, at, choice, after.Percent));
    }

    private Advice LetDown(PairLetDown.Outcome down)
    {
        if (down.Base > pot.Total)
        {
            return Stay(new BenchAction.GiveUp("Split the pot."), FormattableString.Invariant(
                $"{down.Why} Letting it down would take {down.Base.Grams:0} g of base, more than the pot holds: split it and let down a part."));
        }

        var after = pot.LetDown(down.Base);
        var (body, strings) = (after.DoseOf(roles.BodyThickener.Name), after.DoseOf(roles.StringThickener.Name));
        var action = new BenchAction.LetDown(down.Base, body);
        return Finish(action, down.Why, roles.BodyThickener, body.Percent, strings.Percent, (null, null));
    }

    private double WaitFor(double[] changes) => BuildUp.WaitUntilBelow(changes, posterior.TimeConstants(), Settled.Bound(posterior.Evidence.Repeatability));

    /// <summary>Advice that leaves the pot as it is: its chances are those of now.</summary>
    private Advice Stay(BenchAction action, string why, bool isOfString = false) => Finish(
        action is BenchAction.Measure measure ? measure with { IsOfString = isOfString } : action,
        why,
        isOfString ? roles.StringThickener : roles.BodyThickener,
        at.BodyNow,
        at.StringNow,
        (null, null));

    private Advice Finish(BenchAction action, string why, Thickener thickener, double body, double strings, (PlannedDose? Body, PlannedDose? String) plan)
    {
        var chances = body == at.BodyNow && strings == at.StringNow ? now : at.At(body, strings);
        var changes = action is BenchAction.Add or BenchAction.LetDown;
        var (bodyNow, stringNow) = (posterior.LnBodyAt(at.BodyNow, at.StringNow), posterior.LnStringAt(at.BodyNow, at.StringNow));
        AdvisedThickener[] thickeners =
        [
            Dosable(roles.BodyThickener, at.BodyLimit) with { Planned = plan.Body },
            Dosable(roles.StringThickener, at.StringLimit) with { Planned = plan.String },
        ];
        return new(action, why)
        {
            Quantities =
            [
                new AdvisedQuantity.OfBody(
                    at.Band,
                    posterior.Evidence.ReadingCount == 0 ? null : bodyNow.ToEstimate(Study.Level),
                    changes ? posterior.LnBodyAt(body, strings).ToEstimate(Study.Level) : null)
                {
                    ChanceInBand = Chance(chances.BodyIn),
                    ChanceOver = Chance(chances.BodyOver),
                },
                new AdvisedQuantity.OfString(
                    at.Strings,
                    posterior.Evidence.StringCount == 0 ? null : stringNow.ToLengths(Study.Level),
                    changes ? posterior.LnStringAt(body, strings).ToLengths(Study.Level) : null)
                {
                    ChanceInBand = Chance(chances.StringIn),
                    ChanceOver = Chance(chances.StringOver),
                },
            ],
            Thickeners = [.. thickeners.OrderBy(t => t.Name != thickener.Name)],
            ChanceAllInBand = Chance(chances.Both),
            Warnings = [.. warnings],
            Cautions = Cautions.For(roles.BodyThickener.Chemistry == ThickenerChemistry.AlkaliSwellable ? roles.BodyThickener : roles.StringThickener),
        };
    }

    private AdvisedThickener Dosable(Thickener thickener, DoseLimit limit) => new(thickener.Name, pot.DoseOf(thickener.Name), pot.ShareOf(thickener.Name), limit);

    private static Percentage Chance(double fraction) => Percentage.FromFraction(Math.Clamp(fraction, 0, 1));
}
