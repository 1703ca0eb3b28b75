using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;

namespace Viscolog.Tui.Bench;

/// <summary>The one call into Core that a question of the bench screen makes.</summary>
internal static class BenchAdvisor
{
    public static BenchAdvice Of(BenchEffect.Ask ask, ImmutableArray<Run> earlier)
    {
        var band = ask.Run.Target?.Band;
        switch (band is null ? null : Advisor.Advise(new(ask.Run) { Risk = ask.Risk, History = earlier }))
        {
            case AdviceOutcome.Advised advised:
                var drawn = advised.Posterior.Evidence.ReadingCount > 0 ? RunPictures.Of(advised.Posterior, band, advised.Advice, Advisor.Level) : null;
                return new(advised.Advice, null, drawn);
            case AdviceOutcome.AdvisedPair pair:
                return new(pair.Advice, null, null) { Pair = PairPictures.Of(pair.Posterior, band, pair.Advice, Advisor.Level) };
            case AdviceOutcome.Refused refused:
                return new(null, refused.Reason, null);
            default:
                return Posteriors.OfCurve(ask.Run, null, earlier) is PosteriorOutcome.Found { Posterior: { Evidence.ReadingCount: > 0 } posterior }
                    ? new(null, "No target: F8 sets one, and advice begins.", RunPictures.Of(posterior, null, null, Advisor.Level))
                    : new(null, "No target: F8 sets one, and advice begins.", null);
        }
    }
}

/// <summary>What was last advised.</summary>
/// <param name="Advice">The advice; null where there is none.</param>
/// <param name="Refused">Why there is none; null where there is one.</param>
/// <param name="Picture">What the chart shows; null where nothing can be drawn.</param>
internal sealed record BenchAdvice(Advice? Advice, string? Refused, RunPicture? Picture)
{
    /// <summary>What the map shows in place of the chart; null but for a run with two thickeners.</summary>
    public PairPicture? Pair { get; init; }
}
