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
    private const double SteepestRise = 45;

    /// <summary>Rise of ln body at one addition of the usual size from which on a single reading may have a digit too many; a second one
    /// costs less than the pot.</summary>
    private static readonly double LeastTenfold = Math.Log(8);

    /// <summary>Standing time in s after which a body that still rises may do so for another reason than swelling.</summary>
    private const double LongSeconds = 2 * 3600;

    private readonly Posterior _posterior;
    private readonly EvidenceStep _step;
    private readonly double _repeatability;

    public StepChecks(Posterior posterior, EvidenceStep step)
    {
        (_posterior, _step) = (posterior, step);
        _repeatability = posterior.Evidence.Repeatability;
        var stood = step.Readings[^1].WaitSeconds;
        IsTimed = step.Place > 0 && double.IsFinite(stood);
        (Remaining, HasStood, MoreWait) = IsTimed
            ? Settled.After(posterior.ChangesIn(step), posterior.Kinetics(), stood, _repeatability) : (0, true, 0);
        LongEnough = stood >= BuildUp.LongestWaitSeconds;
    }

    /// <summary>Expected size of the change still to come, in ln units.</summary>
    public double Remaining { get; }

    /// <summary>Further wait in s until that is below half the repeatability.</summary>
    public double MoreWait { get; }

    /// <summary>Whether the readings have settled, or are as settled as they get.</summary>
    public bool IsSettled => HasStood || LongEnough || Remaining < Settled.Bound(_repeatability) || TwoAgree;

    /// <summary>Whether the step's readings fall over time by more than they scatter.</summary>
    public bool Falls => _step.Readings.Length >= 2 && IsTimed
        && Settled.IsBeyondScatter(_step.Readings[0].Ln - _step.Readings[^1].Ln, _repeatability);

    /// <summary>
    /// The rise of the last step over the second half of its time or more, in ln units, where it has stood for hours and still rises by
    /// more than it scatters; else null. Swelling ends; drying, a skin or a slow reaction does not.
    /// </summary>
    public double? RiseWithoutEnd
    {
        get
        {
            var last = _step.Readings[^1];
            if (_step.Readings.Length < 3 || !IsTimed || last.WaitSeconds < LongSeconds)
            {
                return null;
            }

            var half = _step.Readings.LastOrDefault(r => r.WaitSeconds <= last.WaitSeconds / 2);
            return half is not null && last.Ln - half.Ln > 3 * Math.Sqrt(2) * _repeatability ? last.Ln - half.Ln : null;
        }
    }

    private bool HasStood { get; }

    private bool IsTimed { get; }

    private bool LongEnough { get; }

    private bool TwoAgree => Settled.Agree([.. _step.Readings.Select(r => (r.WaitSeconds, r.Ln))], _repeatability);

    /// <summary>Why the last reading can't be taken as it is; null where it can.</summary>
    public Contradiction? Contradiction()
    {
        var last = _step.Readings[^1];
        var expected = _posterior.At(_step, last.WaitSeconds).Quantile(0.5);
        if (CurveFilter.OutlierChance(last.Ln - expected, 2 * _repeatability * _repeatability) >= 0.5)
        {
            return new Contradiction.Unexpected { Ratio = Math.Exp(last.Ln - expected) };
        }

        return _step.Readings.Length == 1 ? Jump(last) : null;
    }

    /// <summary>A single reading at a new dose against the step before it.</summary>
    private Contradiction? Jump(BodyReading last)
    {
        var earlier = _posterior.Evidence.Steps.Take(_step.Place).LastOrDefault(s => s.Readings.Length > 0);
        var added = earlier is null ? 0 : _posterior.Evidence.RangesAt(_step) - _posterior.Evidence.RangesAt(earlier);
        if (earlier is null || added <= 0)
        {
            return null;
        }

        var before = earlier.Readings[^1].Ln;
        var most = SteepestRise * added;
        if (last.Ln < before - (3 * _repeatability))
        {
            return new Contradiction.Fell { Ratio = Math.Exp(last.Ln - before) };
        }

        return last.Ln - before > most + (3 * _repeatability) || (added <= IncrementPolicy.StepCap && last.Ln - before >= LeastTenfold)
            ? new Contradiction.Jumped { Ratio = Math.Exp(last.Ln - before) }
            : null;
    }
}
