using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Advising;

/// <summary>From a run with two thickeners to a belief.</summary>
public static class PairBeliefs
{
    /// <summary>Makes the belief of a run.</summary>
    /// <param name="run">The run; it names two thickeners.</param>
    /// <param name="history">Earlier runs; they tell the body's repeatability.</param>
    public static PairBeliefOutcome Of(Run run, ImmutableArray<Run> history) => PairEvidence.Of(LearnedRepeatability.Into(run, history)) switch
    {
        PairEvidenceOutcome.Usable usable => new PairBeliefOutcome.Believed(PairBelief.From(usable.Evidence)),
        PairEvidenceOutcome.Unusable unusable => new PairBeliefOutcome.Refused(unusable.Reason),
        var other => throw new ArgumentOutOfRangeException(nameof(run), other, "not a case of the closed set"),
    };
}
