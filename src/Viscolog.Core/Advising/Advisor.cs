using Viscolog.Core.Curves;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>The one call behind every piece of advice: run and history in, advice out. Deterministic.</summary>
public static class Advisor
{
    /// <summary>Level of the intervals that advice states.</summary>
    public static readonly Percentage Level = Percentage.FromPercent(90);

    /// <summary>Advises on the next thing to do with a pot.</summary>
    /// <param name="request">The run, the band, the risk and the history.</param>
    public static AdviceOutcome Advise(AdviceRequest request)
    {
        var run = request.Run;
        if ((request.Band ?? run.Target?.Band) is not { } band)
        {
            return new AdviceOutcome.Refused("the run states no target; add '# target_mpas: VALUE' to it or give --target");
        }

        if (run.TargetString is { } strings && run.Thickeners.Length > 1)
        {
            return Pair(request, band, strings);
        }

        return RunBeliefs.Of(run, band, request.History) switch
        {
            BeliefOutcome.Believed { Belief: var belief } when TooFar(request, belief) is { } reason => new AdviceOutcome.Refused(reason),
            BeliefOutcome.Believed believed => new AdviceOutcome.Advised(new Decision(request, band, believed.Belief).Decide(), believed.Belief),
            BeliefOutcome.Refused refused => new AdviceOutcome.Refused(refused.Reason),
            var other => throw new ArgumentOutOfRangeException(nameof(request), other, "not a case of the closed set"),
        };
    }

    private static AdviceOutcome Pair(AdviceRequest request, ViscosityBand band, StringBand strings) => PairBeliefs.Of(request.Run, request.History) switch
    {
        PairBeliefOutcome.Believed { Belief: var belief } => new AdviceOutcome.AdvisedPair(new PairDecision(request, band, strings, belief).Decide(), belief),
        PairBeliefOutcome.Refused refused => new AdviceOutcome.Refused(refused.Reason),
        var other => throw new ArgumentOutOfRangeException(nameof(request), other, "not a case of the closed set"),
    };

    private static string? TooFar(AdviceRequest request, Belief belief)
    {
        if (request.WhatIf is not { } poured)
        {
            return null;
        }

        var after = WhatIfs.DoseAfter(request.Run, belief.Evidence.Thickener, poured);
        var most = WhatIfs.Furthest * belief.Evidence.Thickener.UsualRange.Top.Percent;
        return after.Percent <= most ? null : FormattableString.Invariant(
            $"what-if: {poured.Grams:0.###} g would bring the dose to {after.Percent:0.##} %; beyond {most:0.##} %, one and a half times the usual range, there is no forecast");
    }
}
