using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;

namespace Viscolog.Tui;

/// <summary>The one call into Core that a question of the bench screen makes.</summary>
internal static class BenchAdvisor
{
    public static BenchAdvice Of(BenchEffect.Ask ask, ImmutableArray<Run> earlier)
    {
        var band = ask.Run.Target?.Band;
        switch (band is null ? null : Advisor.Advise(new(ask.Run) { Risk = ask.Risk, History = earlier }))
        {
            case AdviceOutcome.Advised advised:
                var drawn = advised.Belief.Evidence.ReadingCount > 0 ? RunPictures.Of(advised.Belief, band, advised.Advice, Advisor.Level) : null;
                return new(advised.Advice, null, drawn);
            case AdviceOutcome.AdvisedPair pair:
                return new(pair.Advice, null, null) { Pair = PairPictures.Of(pair.Belief, band, pair.Advice, Advisor.Level) };
            case AdviceOutcome.Refused refused:
                return new(null, refused.Reason, null);
            default:
                return RunBeliefs.Of(ask.Run, null, earlier) is BeliefOutcome.Believed { Belief: { Evidence.ReadingCount: > 0 } belief }
                    ? new(null, "No target: F8 sets one, and advice begins.", RunPictures.Of(belief, null, null, Advisor.Level))
                    : new(null, "No target: F8 sets one, and advice begins.", null);
        }
    }
}
