using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Quantities;
using Viscolog.Core.Settling;

namespace Viscolog.Core.Inference;

/// <summary>
/// What the readings of a run say of body and string over the doses of two thickeners. Given the readings the two are independent: each has
/// its own draws. Deterministic: the same evidence gives the same posterior.
/// </summary>
public sealed class PairPosterior : IStepForecast
{
    private readonly ImmutableArray<PairBodyDraw> bodies;
    private readonly ImmutableArray<PairStringDraw> strings;

    private PairPosterior(PairEvidence evidence)
    {
        Evidence = evidence;
        var path = new PairPath(evidence);
        var filter = new PairBodyFilter(evidence, path);
        var sampler = new PopulationMonteCarlo(PairSettings.Effort);
        var draws = sampler.Draw([.. Shapes.All.Select((shape, s) => new SampledFamily(
            shape.Parameters.Length + PairBodyFilter.Extra,
            PairBodyFilter.PriorOf(shape),
            () =>
            {
                var own = new PairBodyFilter(evidence, path);
                return row => own.LogLikelihood(shape, row, default);
            },
            104729 * s))]);
        ShapeWeights = Resampling.Weigh([.. draws.Select((d, s) => d.LogMeanWeight() + Math.Log(PairBodyFilter.PriorOf(Shapes.All[s]).Total))]);
        bodies = Resampling.Of(draws, ShapeWeights, PosteriorSettings.Cases, (s, draw) => new PairBodyDraw(s, draw, filter));
        ImmutableArray<PairStringFilter> forms = [.. StringForm.All.Select(f => new PairStringFilter(f, evidence, path))];
        var stringDraws = sampler.Draw([.. forms.Select((f, i) => new SampledFamily(f.Count, f.Prior, () => row => f.LogLikelihood(row, default), 331 + (104729 * i)))]);
        var formWeights = Resampling.Weigh([.. stringDraws.Select((d, i) => d.LogMeanWeight() + Math.Log(forms[i].Prior.Total))]);
        strings = Resampling.Of(stringDraws, formWeights, PosteriorSettings.Cases, (i, draw) => new PairStringDraw(draw, forms[i]));
    }

    /// <summary>The evidence it was made from.</summary>
    public PairEvidence Evidence { get; }

    /// <summary>The weight of each of <see cref="Shapes.All"/> for the body thickener's curve; they sum to 1.</summary>
    public ImmutableArray<double> ShapeWeights { get; }

    double IStepForecast.Repeatability => Evidence.Repeatability;

    double IStepForecast.RangeTop => Evidence.BodyTop;

    /// <summary>The steps with the doses of both thickeners in one, in units of the body thickener's range.</summary>
    ImmutableArray<EvidenceStep> IStepForecast.Steps => [.. Evidence.Steps.Select(Joined)];

    /// <summary>The draws of the body, equally likely.</summary>
    internal ImmutableArray<PairBodyDraw> Bodies => bodies;

    /// <summary>The draws of the string, equally likely.</summary>
    internal ImmutableArray<PairStringDraw> Strings => strings;

    /// <summary>Makes the posterior.</summary>
    /// <param name="evidence">The run's evidence.</param>
    public static PairPosterior From(PairEvidence evidence) => new(evidence);

    /// <summary>The settled body at two doses.</summary>
    /// <param name="bodyDose">Dose of the thickener that makes the body.</param>
    /// <param name="stringDose">Dose of the thickener that brings the string.</param>
    /// <param name="level">Level of the interval, below 100 %.</param>
    public Estimate BodyAt(Dose bodyDose, Dose stringDose, Percentage level) => LnBodyAt(bodyDose.Percent, stringDose.Percent).ToEstimate(level);

    /// <summary>The string at two doses.</summary>
    /// <param name="bodyDose">Dose of the thickener that makes the body.</param>
    /// <param name="stringDose">Dose of the thickener that brings the string.</param>
    /// <param name="level">Level of the interval, below 100 %.</param>
    public LengthEstimate StringAt(Dose bodyDose, Dose stringDose, Percentage level) => LnStringAt(bodyDose.Percent, stringDose.Percent).ToLengths(level);

    /// <summary>The settled ln body at two doses in %.</summary>
    internal LnEstimate LnBodyAt(double body, double @string)
    {
        var (means, sds) = (new double[bodies.Length], new double[bodies.Length]);
        for (var i = 0; i < means.Length; i++)
        {
            var (mean, variance) = bodies[i].At(body / Evidence.BodyTop, @string / Evidence.StringTop);
            (means[i], sds[i]) = (mean, Math.Sqrt(variance));
        }

        return new(means, sds);
    }

    /// <summary>ln string at two doses in %.</summary>
    internal LnEstimate LnStringAt(double body, double @string)
    {
        var (means, sds) = (new double[strings.Length], new double[strings.Length]);
        for (var i = 0; i < means.Length; i++)
        {
            var (mean, variance) = strings[i].At(body / Evidence.BodyTop, @string / Evidence.StringTop);
            (means[i], sds[i]) = (mean, Math.Sqrt(variance));
        }

        return new(means, sds);
    }

    /// <inheritdoc/>
    LnEstimate IStepForecast.At(EvidenceStep step, double waitSeconds) => BodyIn(step.Place, waitSeconds);

    /// <summary>What a step shows after standing for a time, without the reading's own error.</summary>
    internal LnEstimate BodyIn(int step, double waitSeconds)
    {
        var (means, sds) = (new double[bodies.Length], new double[bodies.Length]);
        for (var i = 0; i < means.Length; i++)
        {
            var (mean, variance) = bodies[i].At(Evidence.Steps[step].Body.Dose / Evidence.BodyTop, Evidence.Steps[step].StringDose / Evidence.StringTop);
            means[i] = mean - (bodies[i].Changes[step] * BuildUp.Remaining(waitSeconds, bodies[i].TimeConstant));
            sds[i] = Math.Sqrt(variance);
        }

        return new(means, sds);
    }

    /// <inheritdoc/>
    double[] IStepForecast.ChangesIn(EvidenceStep step) => [.. bodies.Select(c => c.Changes[step.Place])];

    /// <inheritdoc/>
    double[] IStepForecast.TimeConstants() => [.. bodies.Select(c => c.TimeConstant)];

    /// <summary>Rise of each case's body between two places, in ln units.</summary>
    internal double[] RisesBetween((double Body, double String) from, (double Body, double String) to)
    {
        var (a, b) = (Evidence.BodyTop, Evidence.StringTop);
        return [.. bodies.Select(c => c.At(to.Body / a, to.String / b).Mean - c.At(from.Body / a, from.String / b).Mean)];
    }

    /// <summary>A step with the doses of both thickeners in one.</summary>
    internal EvidenceStep Joined(PairStep step) => step.Body with { Dose = step.Body.Dose + (step.StringDose / Evidence.StringTop * Evidence.BodyTop) };
}
