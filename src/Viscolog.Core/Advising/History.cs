using System.Collections.Immutable;
using Viscolog.Core.Inference;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Advising;

/// <summary>Turns earlier runs with the same base and thickener into a prior.</summary>
internal static class History
{
    /// <summary>Earlier runs taken into account at most; the latest given count, so that a long log costs no more than a short one.</summary>
    private const int Most = 8;

    /// <summary>Makes the prior.</summary>
    public static Prior For(Run run, Thickener thickener, ImmutableArray<Run> earlier)
    {
        var posteriors = earlier
            .Reverse()
            .Where(r => r.Base.Name is not null && r.Base.Name == run.Base.Name && ShearConditions.Agree(r, run))
            .Select(r => r.FindThickener(thickener.Name) is { } same && Evidence.Of(r, same) is EvidenceOutcome.Usable usable ? usable.Evidence : null)
            .OfType<Evidence>()
            .Where(e => e.Steps.Count(s => s.Readings.Length > 0) >= 2)
            .Take(Most)
            .AsParallel()
            .AsOrdered()
            .Select(e => Posterior.OfEarlier(e, thickener.UsualRange))
            .ToArray();
        return Prior.After(posteriors);
    }
}
