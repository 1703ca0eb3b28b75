using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Curves;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Reports;

/// <summary>All that a report says of a run beyond its entries, worked out once.</summary>
/// <param name="Band">The band aimed at; null for none.</param>
internal sealed record RunStudy(ViscosityBand? Band)
{
    /// <summary>What the run says; null where nothing can be believed of it.</summary>
    public Belief? Belief { get; private init; }

    /// <summary>What a run with two thickeners says; null for any other.</summary>
    public PairStudy? Pair { get; private init; }

    /// <summary>What the reader of the run must know.</summary>
    public ImmutableArray<string> Warnings => Pair?.Belief.Evidence.Warnings ?? Belief?.Evidence.Warnings ?? [];

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
            return new(band) { Pair = new(pair.Belief, pair.Advice, run.TargetString!), Advice = pair.Advice };
        }

        var advised = answer as AdviceOutcome.Advised;
        var outcome = advised is null ? RunBeliefs.Of(run, band, history) : new BeliefOutcome.Believed(advised.Belief);
        return outcome switch
        {
            BeliefOutcome.Refused refused => new(band) { Trouble = refused.Reason },
            BeliefOutcome.Believed { Belief: { Evidence.ReadingCount: 0 } belief } => new(band) { Belief = belief, Trouble = "no reading of it counts" },
            BeliefOutcome.Believed { Belief: var belief } => new(band)
            {
                Belief = belief,
                Advice = advised?.Advice,
                Picture = RunPictures.Of(belief, band, advised?.Advice, Advisor.Level),
                Now = advised?.Advice.Now ?? belief.BodyAt(run.PotNow().DoseOf(belief.Evidence.Thickener.Name), Advisor.Level),
            },
            _ => throw new ArgumentOutOfRangeException(nameof(run), outcome, "not a case of the closed set"),
        };
    }
}
