using Viscolog.Core.Curves;
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
            return new AdviceOutcome.Refused("the run states no target; add '# target_mpas: …' to it or give --target");
        }

        if (run.TargetString is not null && run.Thickeners.Length > 1)
        {
            return new AdviceOutcome.Refused("advice on body and string together is not there yet; leave target_string_mm out to get advice on the body alone");
        }

        if (Evidence.MainThickener(run) is not { } thickener)
        {
            return new AdviceOutcome.Refused("the run names no thickener; add '# thickener: NAME' to it");
        }

        var outcome = Evidence.Of(run, thickener);
        if (outcome is not EvidenceOutcome.Usable { Evidence: var evidence })
        {
            return new AdviceOutcome.Refused(((EvidenceOutcome.Unusable)outcome).Reason);
        }

        var belief = Belief.From(evidence, History.For(run, thickener, request.History), band);
        return new AdviceOutcome.Advised(new Decision(request, band, belief).Decide(), belief);
    }
}
