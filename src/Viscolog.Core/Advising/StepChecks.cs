using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Advising;

/// <summary>Looks at the last step's readings for what must be cleared up before anything goes in.</summary>
internal sealed class StepChecks
{
    /// <summary>
    /// A rise of ln body for each usual range of dose that no thickener is credited with on one reading: steeper than nearly all curves of
    /// the priors at their steepest.
    /// </summary>
    private const double SteepestRise = 15;

    private readonly Posterior posterior;
    private readonly EvidenceStep step;
    private readonly double repeatability;

    public StepChecks(Posterior posterior, EvidenceStep step)
    {
        (this.posterior, this.step) = (posterior, step);
        repeatability = posterior.Evidence.Repeatability;
        var stood = step.Readings[^1].WaitSeconds;
        IsTimed = step.Place > 0 && double.IsFinite(stood);
        (Remaining, MoreWait) = IsTimed ? Settled.After(posterior.ChangesIn(step), posterior.TimeConstants(), stood, repeatability) : (0, 0);
        LongEnough = stood >= BuildUp.LongestWaitSeconds;
    }

    /// <summary>Expected size of the change still to come, in ln units.</summary>
    public double Remaining { get; }

    /// <summary>Further wait in s until that is below half the repeatability.</summary>
    public double MoreWait { get; }

    /// <summary>Whether the readings have settled, or are as settled as they get.</summary>
    public bool IsSettled => !IsTimed || LongEnough || Remaining < Settled.Bound(repeatability) || TwoAgree;

    /// <summary>Whether the step's readings fall over time by more than they scatter.</summary>
    public bool Falls => step.Readings.Length >= 2 && IsTimed && step.Readings[0].Ln - step.Readings[^1].Ln > 2 * Math.Sqrt(2) * repeatability;

    private bool IsTimed { get; }

    private bool LongEnough { get; }

    private bool TwoAgree => step.Readings.Length >= 2
        && Settled.TwoAgree((step.Readings[^2].WaitSeconds, step.Readings[^2].Ln), (step.Readings[^1].WaitSeconds, step.Readings[^1].Ln), repeatability);

    /// <summary>Why the last reading can't be taken as it is; null where it can.</summary>
    public Contradiction? Contradiction()
    {
        var last = step.Readings[^1];
        var expected = posterior.At(step, last.WaitSeconds).Quantile(0.5);
        if (CurveFilter.OutlierChance(last.Ln - expected, 2 * repeatability * repeatability) >= 0.5)
        {
            return new Contradiction.Unexpected { Ratio = Math.Exp(last.Ln - expected) };
        }

        return step.Readings.Length == 1 ? Jump(last) : null;
    }

    /// <summary>A single reading at a new dose against the step before it.</summary>
    private Contradiction? Jump(BodyReading last)
    {
        var earlier = posterior.Evidence.Steps.Take(step.Place).LastOrDefault(s => s.Readings.Length > 0);
        var added = earlier is null ? 0 : posterior.Evidence.RangesAt(step) - posterior.Evidence.RangesAt(earlier);
        if (earlier is null || added <= 0)
        {
            return null;
        }

        var before = earlier.Readings[^1].Ln;
        var most = SteepestRise * added;
        if (last.Ln < before - (3 * repeatability))
        {
            return new Contradiction.Fell { Ratio = Math.Exp(last.Ln - before) };
        }

        return last.Ln - before > most + (3 * repeatability)
            ? new Contradiction.Jumped { Ratio = Math.Exp(last.Ln - before) }
            : null;
    }
}
