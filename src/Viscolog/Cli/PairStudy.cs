using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Cli;

/// <summary>What is believed and, where both targets are stated, advised of a run with two thickeners.</summary>
/// <param name="Posterior">The posterior.</param>
/// <param name="Advice">The advice; null where a target is missing.</param>
internal sealed record PairStudy(Posterior Posterior, Advice? Advice)
{
    /// <summary>The study of a run; null after its refusal was reported.</summary>
    public static PairStudy? Of(NamedRun named, ViscosityBand? band, string purpose, Invocation call)
    {
        var run = named.File.Run;
        var advised = band is null || run.TargetString is null ? null : Advisor.Advise(new(run) { Band = band, History = named.Earlier }) as AdviceOutcome.AdvisedPair;
        var study = advised is not null ? new PairStudy(advised.Posterior, advised.Advice) : Found(run, named.Earlier, named.Name, call);
        if (study is { Posterior.Evidence.ReadingCount: 0 })
        {
            call.Refuse($"{named.Name}: no reading to {purpose}; log at least the base as it stands");
            return null;
        }

        return study;
    }

    private static PairStudy? Found(Run run, ImmutableArray<Run> earlier, string name, Invocation call)
    {
        switch (Posteriors.OfPair(run, earlier))
        {
            case PosteriorOutcome.Found believed:
                return new(believed.Posterior, null);
            case PosteriorOutcome.Refused refused:
                call.Refuse($"{name}: {refused.Reason}");
                return null;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }
}
