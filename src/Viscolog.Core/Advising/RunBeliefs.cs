using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>From a run and earlier runs to a belief.</summary>
public static class RunBeliefs
{
    /// <summary>Makes the belief of the run's main thickener.</summary>
    /// <param name="run">The run.</param>
    /// <param name="band">The band aimed at; null for none.</param>
    /// <param name="history">Earlier runs; those with another base or thickener are left aside.</param>
    public static BeliefOutcome Of(Run run, ViscosityBand? band, ImmutableArray<Run> history)
    {
        if (Evidence.MainThickener(run) is not { } thickener)
        {
            return new BeliefOutcome.Refused("the run names no thickener; add '# thickener: NAME' to it");
        }

        return Evidence.Of(LearnedRepeatability.Into(run, history), thickener) switch
        {
            EvidenceOutcome.Usable usable => new BeliefOutcome.Believed(Belief.Heeding(usable.Evidence, History.For(run, thickener, history), band)),
            EvidenceOutcome.Unusable unusable => new BeliefOutcome.Refused(unusable.Reason),
            var other => throw new ArgumentOutOfRangeException(nameof(run), other, "not a case of the closed set"),
        };
    }
}
