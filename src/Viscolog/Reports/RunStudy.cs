using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Reports;

/// <summary>All that a report says of a run beyond its entries, worked out once.</summary>
/// <param name="Band">The band aimed at; null for none.</param>
internal sealed record RunStudy(ViscosityBand? Band)
{
    /// <summary>What the run says; null where nothing can be believed of it.</summary>
    public Posterior? Posterior { get; private init; }

    /// <summary>What a run with two thickeners says; null for any other.</summary>
    public PairStudy? Pair { get; private init; }

    /// <summary>What the reader of the run must know.</summary>
    public ImmutableArray<string> Warnings => Pair?.Posterior.Evidence.Warnings ?? Posterior?.Evidence.Warnings ?? [];

    /// <summary>What the picture shows; null likewise.</summary>
    public RunPicture? Picture { get; private init; }

    /// <summary>What to do with the pot; null without a target.</summary>
    public Advice? Advice { get; private init; }

    /// <summary>Why nothing can be believed of it; null where something can.</summary>
    public string? Trouble { get; private init; }

    /// <summary>The settled body now; null where nothing can be believed, or nothing was read.</summary>
    public Estimate? Now { get; private init; }

    /// <summary>Works it out.</summary>
    /// <param name="run">The run.</param>
    /// <param name="band">The band aimed at; null for none.</param>
    /// <param name="history">Earlier runs.</param>
    public static RunStudy Of(Run run, ViscosityBand? band, ImmutableArray<Run> history)
    {
        var answer = band is null ? null : Advisor.Advise(new(run) { Band = band, History = history });
        if (answer is AdviceOutcome.AdvisedPair pair)
        {
            return new(band) { Pair = new(pair.Posterior, pair.Advice, run.TargetString!), Advice = pair.Advice };
        }

        var advised = answer as AdviceOutcome.Advised;
        var outcome = advised is null ? Posteriors.OfCurve(run, band, history) : new PosteriorOutcome.Found(advised.Posterior);
        return outcome switch
        {
            PosteriorOutcome.Refused refused => new(band) { Trouble = refused.Reason },
            PosteriorOutcome.Found { Posterior: { Evidence.ReadingCount: 0 } posterior } => new(band) { Posterior = posterior, Trouble = "no reading of it counts" },
            PosteriorOutcome.Found { Posterior: var posterior } => new(band)
            {
                Posterior = posterior,
                Advice = advised?.Advice,
                Picture = RunPictures.Of(posterior, band, advised?.Advice, Advisor.Level),
                Now = advised?.Advice.Body.Now ?? posterior.BodyAt(run.PotNow().DoseOf(posterior.Evidence.Thickener.Name), Advisor.Level),
            },
            _ => throw new ArgumentOutOfRangeException(nameof(run), outcome, "not a case of the closed set"),
        };
    }
}
