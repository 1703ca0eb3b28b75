using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>How the next addition of the only thickener is chosen.</summary>
internal sealed class OneThickener(Situation at) : AdditionPolicy(at, DecisionSettings.One)
{
    /// <summary>Doses with a reading below which the slope is not trusted far.</summary>
    private const int FewDoses = 3;

    /// <summary>Weight of a shape from which on the others hardly count.</summary>
    private const double ClearShape = 0.6;

    private readonly Reach _reach = at.Posterior.Reach(at.Band.Low);

    private DoseLimit Limit => At.Limit(Quantity.Body);

    private Percentage Risk => At.Request.Risk;

    /// <inheritdoc/>
    public override bool IsHopeless
        => Limit.Dose <= At.Now.Body || (!IsStillRising && _reach.ChanceWithin(Limit.Dose).Fraction < DoseLimits.HopelessChance);

    /// <summary>
    /// Whether giving up would rest on the prior alone or go against the readings: fewer than two doses are read, or the rise of the last
    /// step, kept up to the dose limit, would come up to the band.
    /// </summary>
    private bool IsStillRising
    {
        get
        {
            EvidenceStep[] read = [.. At.Evidence.Steps.Where(s => s.Readings.Length > 0)];
            if (read.Length < 3)
            {
                return true;
            }

            var (before, last) = (read[^2], read[^1]);
            var (from, to) = (At.Median(Quantity.Body, before.Doses), At.Median(Quantity.Body, last.Doses));
            var steps = last.Dose > before.Dose ? (Limit.Dose.Percent - last.Dose) / (last.Dose - before.Dose) : 0;
            return to - from > At.Posterior.Repeatability && to + (steps * (to - from)) >= At.Band.Low.Ln;
        }
    }

    /// <inheritdoc/>
    public override Addition? Choose()
        => IncrementPolicy.Choose(
            At.Posterior, At.Band, At.Now.Body.Percent, Limit.Dose.Percent, At.Evidence.RangeTop, Risk.Fraction) is { } choice
            ? new(Quantity.Body, choice.DosePercent, choice.BestChance, choice.Bound)
            : null;

    /// <inheritdoc/>
    public override Move? InsteadOf(Addition? addition) => addition is not null && !IsHopeless ? null : Stuck();

    /// <inheritdoc/>
    public override Move Stuck()
    {
        if (At.Over(Quantity.Body, At.Now) > Risk.Fraction && !IsHopeless)
        {
            return IsReadOften(Quantity.Body)
                ? new LetDowns(At, Settings).ToAim(Quantity.Body) : Move.ReadBody(new AdviceReason.MaybeOver());
        }

        var top = At.Thickener(Quantity.Body).UsualRange.Top;
        var withoutLimit = Limit.Dose < top && _reach.ChanceWithin(top).Fraction >= DoseLimits.HopelessChance;
        return Move.GiveUp(
            Remedy.AnotherTarget,
            withoutLimit ? new AdviceReason.LimitInTheWay(Limit) : new AdviceReason.OutOfReach(At.Thickener(Quantity.Body).Name));
    }

    /// <inheritdoc/>
    public override AdviceReason Why(Addition addition)
    {
        var (steps, runs) = (At.Evidence.Steps, At.Posterior.Prior.Runs);
        var doses = steps.Where(s => s.Readings.Length > 0).Select(s => s.Dose).Distinct().Count();
        return new AdviceReason.Chosen(addition.Bound, Risk, Limit)
        {
            IsOnKnownGround = addition.DosePercent > steps[^1].Dose + (IncrementPolicy.StepCap * At.Evidence.RangeTop) + 1e-9,
            EarlierRuns = runs,
            FewDoses = doses >= FewDoses || runs > 0 ? null : doses,
            IsShapeOpen = At.Posterior.ShapeWeights.Max() <= ClearShape && steps.Length >= FewDoses,
        };
    }
}
