using System.Collections.Immutable;
using Viscolog.Core.Curves;
using Viscolog.Core.Observing;
using Viscolog.Core.Sampling;

namespace Viscolog.Core.Inference;

/// <summary>
/// Body and string over the doses of two thickeners, drawn for the readings of a run: shapes and forms by population Monte Carlo, levels
/// and
/// coefficients along the path of the doses by Kalman filters. Given the readings the two are independent: each has its own draws.
/// </summary>
internal static class SampledPairs
{
    private static readonly PopulationMonteCarlo Sampler = new(PairSettings.Effort);

    /// <summary>Makes the posterior.</summary>
    /// <param name="evidence">The evidence of two thickeners.</param>
    public static Posterior Posterior(Evidence evidence)
    {
        var path = new PairPath(evidence);
        var (weights, bodies) = Bodies(evidence, path);
        return new(evidence, Prior.Common, weights, bodies) { Strings = Strings(evidence, path) };
    }

    private static (ImmutableArray<double> Weights, ImmutableArray<BodyDraw> Draws) Bodies(Evidence evidence, PairPath path)
    {
        var samples = Sampler.Draw([.. Shapes.All.Select((shape, s) => new SampledFamily(
            PairBodyParameters.Count(shape),
            PairBodyFilter.PriorOf(shape),
            () =>
            {
                var own = new PairBodyFilter(evidence, path);
                return (row, _) => own.LogLikelihood(shape, new(row), default);
            },
            104729 * s))]);
        var (weights, _) = Resampling.Weigh(
            [.. samples.Select((d, s) => d.LogMeanWeight() + Math.Log(PairBodyFilter.PriorOf(Shapes.All[s]).Total))]);
        var filter = new PairBodyFilter(evidence, path);
        BodyDraw Draw(int shape, double[] row) => new PairBodyDraw(shape, new(row), filter);
        return (weights, Resampling.Of(samples, weights, MonteCarloSettings.Draws, Draw));
    }

    private static ImmutableArray<PairStringDraw> Strings(Evidence evidence, PairPath path)
    {
        ImmutableArray<PairStringFilter> forms = [.. StringForm.All.Select(f => new PairStringFilter(f, evidence, path))];
        var samples = Sampler.Draw([.. forms.Select((f, i) => new SampledFamily(
            StringParameters.Count(f.Form), f.Prior, () => (row, _) => f.LogLikelihood(new(row), default), 331 + (104729 * i)))]);
        var (weights, _) = Resampling.Weigh([.. samples.Select((d, i) => d.LogMeanWeight() + Math.Log(forms[i].Prior.Total))]);
        return Resampling.Of(samples, weights, MonteCarloSettings.Draws, (i, row) => new PairStringDraw(new(row), forms[i]));
    }
}
