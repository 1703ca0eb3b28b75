using System.Collections.Immutable;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>From a run, its target and earlier runs to a posterior. Deterministic: the same input gives the same posterior.</summary>
public static class Posteriors
{
    /// <summary>
    /// Makes the posterior of a run: of two thickeners where both are in the pot or a string is wanted, else of its main one.
    /// </summary>
    /// <param name="run">The run.</param>
    /// <param name="band">The band aimed at; null for none.</param>
    /// <param name="history">Earlier runs; those with another base or thickener are left aside.</param>
    public static PosteriorOutcome Of(Run run, ViscosityBand? band, ImmutableArray<Run> history)
        => PairRoles.Apply(run) ? OfPair(run, history) : OfCurve(run, band, history);

    /// <summary>Makes the posterior of the curve of the run's main thickener.</summary>
    /// <param name="run">The run.</param>
    /// <param name="band">The band aimed at; null for none.</param>
    /// <param name="history">Earlier runs; those with another base or thickener are left aside.</param>
    public static PosteriorOutcome OfCurve(Run run, ViscosityBand? band, ImmutableArray<Run> history)
    {
        if (Evidence.MainThickener(run) is not { } thickener)
        {
            return new PosteriorOutcome.Refused(new EvidenceTrouble.NoThickener());
        }

        var evidence = Evidence.Of(LearnedRepeatability.Into(run, history), thickener);
        return Outcome(evidence, e => WithHistory(e, History.For(run, thickener, history), band));
    }

    /// <summary>Makes the posterior of body and string over the doses of two thickeners.</summary>
    /// <param name="run">The run; it names two thickeners.</param>
    /// <param name="history">Earlier runs; they tell the body's repeatability.</param>
    public static PosteriorOutcome OfPair(Run run, ImmutableArray<Run> history)
        => Outcome(Evidence.OfPair(LearnedRepeatability.Into(run, history)), SampledPairs.Posterior);

    /// <summary>
    /// The posterior after earlier runs, or without them where the readings say that this pot is unlike them. The two priors are weighed by
    /// how
    /// likely each makes the readings; the second is worked out only where there is a sign of it.
    /// </summary>
    /// <param name="evidence">The evidence of one thickener.</param>
    /// <param name="prior">The prior from the earlier runs.</param>
    /// <param name="band">The band aimed at; null where there is none. Curves that never come near it count for less.</param>
    internal static Posterior WithHistory(Evidence evidence, Prior prior, ViscosityBand? band)
    {
        var with = Sampled(evidence, prior, band);
        var chanceUnlike = with.ChanceUnlikeHistory();
        if (prior.Runs == 0 || (chanceUnlike < HistorySettings.SignOfUnlike && !prior.IsFarFrom(evidence)))
        {
            return Made(with.ShapeWeights, with.Draws, prior, chanceUnlike);
        }

        var without = Sampled(evidence, Prior.Common, band);
        var odds = HistorySettings.UnlikeBase / (1 - HistorySettings.UnlikeBase) * Math.Exp(
            Math.Min(700, without.LogEvidence - with.LogEvidence));
        var chance = (chanceUnlike + odds) / (1 + odds);
        var share = odds / (1 + odds);
        return chance >= HistorySettings.SurelyUnlike
            ? Made(without.ShapeWeights, without.Draws, Prior.Common, chance)
            : Made(
                [.. with.ShapeWeights.Zip(without.ShapeWeights, (a, b) => ((1 - share) * a) + (share * b))],
                [.. with.Draws.Zip(without.Draws).Select((both, i) => IsOther(i) ? both.Second : both.First)],
                prior,
                chance);

        // Every draw of the one at whose place the running count of the other's share passes a whole number.
        bool IsOther(int i) => Math.Floor((i + 1) * share) > Math.Floor(i * share);

        Posterior Made(ImmutableArray<double> weights, ImmutableArray<CurveDraw> draws, Prior made, double unlike)
            => new(evidence, made, weights, [.. draws]) { ChanceUnlikeHistory = Percentage.FromFraction(unlike) };
    }

    /// <summary>The posterior of one thickener's curve under a prior that is taken as it is.</summary>
    /// <param name="evidence">The evidence of one thickener.</param>
    /// <param name="prior">The prior.</param>
    /// <param name="band">The band aimed at; null where there is none.</param>
    internal static Posterior Under(Evidence evidence, Prior prior, ViscosityBand? band)
    {
        var sampled = Sampled(evidence, prior, band);
        var unlike = Percentage.FromFraction(sampled.ChanceUnlikeHistory());
        return new(evidence, prior, sampled.ShapeWeights, [.. sampled.Draws]) { ChanceUnlikeHistory = unlike };
    }

    private static SampledCurves Sampled(Evidence evidence, Prior prior, ViscosityBand? band)
        => new(evidence, evidence.RangeTop, prior, band, SamplingEffort.Full);

    private static PosteriorOutcome Outcome(EvidenceOutcome outcome, Func<Evidence, Posterior> make) => outcome switch
    {
        EvidenceOutcome.Usable usable => new PosteriorOutcome.Found(make(usable.Evidence)),
        EvidenceOutcome.Unusable unusable => new PosteriorOutcome.Refused(unusable.Reason),
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "not a case of the closed set"),
    };
}

/// <summary>Whether there is a posterior of a run. The set of cases is closed.</summary>
public abstract record PosteriorOutcome
{
    private protected PosteriorOutcome()
    {
    }

    /// <summary>There is.</summary>
    /// <param name="Posterior">The posterior.</param>
    public sealed record Found(Posterior Posterior) : PosteriorOutcome;

    /// <summary>There is none.</summary>
    /// <param name="Reason">Why.</param>
    public sealed record Refused(EvidenceTrouble Reason) : PosteriorOutcome;
}
