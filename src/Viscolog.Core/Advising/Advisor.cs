using System.Collections.Immutable;
using Viscolog.Core.Inference;
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

        return Posteriors.OfCurve(run, band, request.History) switch
        {
            PosteriorOutcome.Found { Posterior: var posterior } when TooFar(request, posterior) is { } reason => new AdviceOutcome.Refused(reason),
            PosteriorOutcome.Found believed => new AdviceOutcome.Advised(new Decision(request, band, believed.Posterior).Decide(), believed.Posterior),
            PosteriorOutcome.Refused refused => new AdviceOutcome.Refused(refused.Reason),
            var other => throw new ArgumentOutOfRangeException(nameof(request), other, "not a case of the closed set"),
        };
    }

    private static AdviceOutcome Pair(AdviceRequest request, ViscosityBand band, StringBand strings) => Posteriors.OfPair(request.Run, request.History) switch
    {
        PosteriorOutcome.Found { Posterior: var posterior } => new AdviceOutcome.AdvisedPair(new PairDecision(request, band, strings, posterior).Decide(), posterior),
        PosteriorOutcome.Refused refused => new AdviceOutcome.Refused(refused.Reason),
        var other => throw new ArgumentOutOfRangeException(nameof(request), other, "not a case of the closed set"),
    };

    private static string? TooFar(AdviceRequest request, Posterior posterior)
    {
        if (request.WhatIf is not { } poured)
        {
            return null;
        }

        var after = WhatIfs.DoseAfter(request.Run, posterior.Evidence.Thickener, poured);
        var most = WhatIfs.Furthest * posterior.Evidence.Thickener.UsualRange.Top.Percent;
        return after.Percent <= most ? null : FormattableString.Invariant(
            $"what-if: {poured.Grams:0.###} g would bring the dose to {after.Percent:0.##} %; beyond {most:0.##} %, one and a half times the usual range, there is no forecast");
    }
}

/// <summary>What is asked.</summary>
/// <param name="Run">The run so far.</param>
public sealed record AdviceRequest(Run Run)
{
    /// <summary>The band aimed at; null for the run's own.</summary>
    public ViscosityBand? Band { get; init; }

    /// <summary>The greatest chance of going over that an addition may carry.</summary>
    public Percentage Risk { get; init; } = IncrementPolicy.DefaultRisk;

    /// <summary>An addition to be judged beside the advice, dilution water included; null for none.</summary>
    public Mass? WhatIf { get; init; }

    /// <summary>Earlier runs; those with another base or thickener are left aside.</summary>
    public ImmutableArray<Run> History { get; init; } = [];
}

/// <summary>Whether advice could be given. The set of cases is closed.</summary>
public abstract record AdviceOutcome
{
    private protected AdviceOutcome()
    {
    }

    /// <summary>The advice given; null where it was refused.</summary>
    public Advice? Given => this switch
    {
        Advised advised => advised.Advice,
        AdvisedPair pair => pair.Advice,
        _ => null,
    };

    /// <summary>It could.</summary>
    /// <param name="Advice">The advice.</param>
    /// <param name="Posterior">The posterior it rests on.</param>
    public sealed record Advised(Advice Advice, Posterior Posterior) : AdviceOutcome;

    /// <summary>It could, for body and string together.</summary>
    /// <param name="Advice">The advice.</param>
    /// <param name="Posterior">The posterior it rests on.</param>
    public sealed record AdvisedPair(Advice Advice, Posterior Posterior) : AdviceOutcome;

    /// <summary>It could not.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Refused(string Reason) : AdviceOutcome;
}
