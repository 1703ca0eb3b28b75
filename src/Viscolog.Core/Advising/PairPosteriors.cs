using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Advising;

/// <summary>From a run with two thickeners to a posterior.</summary>
public static class PairPosteriors
{
    /// <summary>Makes the posterior of a run.</summary>
    /// <param name="run">The run; it names two thickeners.</param>
    /// <param name="history">Earlier runs; they tell the body's repeatability.</param>
    public static PairPosteriorOutcome Of(Run run, ImmutableArray<Run> history) => PairEvidence.Of(LearnedRepeatability.Into(run, history)) switch
    {
        PairEvidenceOutcome.Usable usable => new PairPosteriorOutcome.Found(PairPosterior.From(usable.Evidence)),
        PairEvidenceOutcome.Unusable unusable => new PairPosteriorOutcome.Refused(unusable.Reason),
        var other => throw new ArgumentOutOfRangeException(nameof(run), other, "not a case of the closed set"),
    };
}

/// <summary>Whether a run with two thickeners can be believed anything of. The set of cases is closed.</summary>
public abstract record PairPosteriorOutcome
{
    private protected PairPosteriorOutcome()
    {
    }

    /// <summary>It can.</summary>
    /// <param name="Posterior">The posterior.</param>
    public sealed record Found(PairPosterior Posterior) : PairPosteriorOutcome;

    /// <summary>It can't.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Refused(string Reason) : PairPosteriorOutcome;
}
