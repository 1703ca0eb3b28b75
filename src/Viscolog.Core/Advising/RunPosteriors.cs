using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>From a run and earlier runs to a posterior.</summary>
public static class RunPosteriors
{
    /// <summary>Makes the posterior of the run's main thickener.</summary>
    /// <param name="run">The run.</param>
    /// <param name="band">The band aimed at; null for none.</param>
    /// <param name="history">Earlier runs; those with another base or thickener are left aside.</param>
    public static PosteriorOutcome Of(Run run, ViscosityBand? band, ImmutableArray<Run> history)
    {
        if (Evidence.MainThickener(run) is not { } thickener)
        {
            return new PosteriorOutcome.Refused("the run names no thickener; add '# thickener: NAME' to it");
        }

        return Evidence.Of(LearnedRepeatability.Into(run, history), thickener) switch
        {
            EvidenceOutcome.Usable usable => new PosteriorOutcome.Found(Posterior.WithHistory(usable.Evidence, History.For(run, thickener, history), band)),
            EvidenceOutcome.Unusable unusable => new PosteriorOutcome.Refused(unusable.Reason),
            var other => throw new ArgumentOutOfRangeException(nameof(run), other, "not a case of the closed set"),
        };
    }
}

/// <summary>Whether a run can be believed anything of. The set of cases is closed.</summary>
public abstract record PosteriorOutcome
{
    private protected PosteriorOutcome()
    {
    }

    /// <summary>It can.</summary>
    /// <param name="Posterior">The posterior.</param>
    public sealed record Found(Posterior Posterior) : PosteriorOutcome;

    /// <summary>It can't.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Refused(string Reason) : PosteriorOutcome;
}
