using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>
/// Population Monte Carlo (Cappé, Guillin, Marin and Robert, Journal of Computational and Graphical Statistics 13 (2004) 907–929): draws
/// from the prior are weighted by a tempered likelihood, a normal distribution is fitted to them, widened and mixed with the prior, and drawn from anew.
/// Shapes that have fallen far behind are not drawn from anew: their weight is nil to all digits that matter. Shapes are drawn side by side; what comes out does not depend on it.
/// </summary>
internal sealed class PopulationMonteCarlo(Func<CurveFilter> filters, BeliefEffort effort)
{
    /// <summary>How far behind the best, in ln of evidence, a shape is left after each round; the early rounds judge roughly.</summary>
    private static readonly ImmutableArray<double> Behind = [14, 9, 7];

    /// <summary>For each of <see cref="Shapes.All"/> the last round's draws, weighted by likelihood, prior and proposal.</summary>
    public WeightedDraws[] Draw(ImmutableArray<Mixture> priors)
    {
        var draws = new WeightedDraws[priors.Length];
        Parallel.For(0, draws.Length, s => draws[s] = First(filters(), Shapes.All[s], priors[s], Place(s, 0)));
        var left = new bool[draws.Length];
        for (var round = 1; round < effort.Tempering.Length; round++)
        {
            Leave(draws, left, priors, round);
            Parallel.For(0, draws.Length, s =>
            {
                if (!left[s])
                {
                    draws[s] = Next(filters(), Shapes.All[s], priors[s], draws[s], effort.Tempering[round], Place(s, round));
                }
            });
        }

        return draws;
    }

    /// <summary>Finishes the shapes that have fallen far behind with the draws they have.</summary>
    private void Leave(WeightedDraws[] draws, bool[] left, ImmutableArray<Mixture> priors, int round)
    {
        var more = 1 - effort.Tempering[round - 1];
        var evidence = draws.Select((d, s) => d.LogMeanWeight(left[s] ? 0 : more) + Math.Log(priors[s].Total)).ToArray();
        var least = evidence.Max() - Behind[round - 1];
        for (var s = 0; s < draws.Length; s++)
        {
            if (!left[s] && evidence[s] < least)
            {
                draws[s].CountMore(more);
                left[s] = true;
            }
        }
    }

    /// <summary>Where in the table of random numbers a shape's round begins.</summary>
    private static int Place(int shape, int round) => (104729 * shape) + (7919 * round);

    private WeightedDraws First(CurveFilter filter, Shape shape, Mixture prior, int place)
    {
        var dimension = shape.Parameters.Length + Prior.Extra;
        var draws = new WeightedDraws(effort.FirstDraws, dimension);
        for (var i = 0; i < draws.Count; i++)
        {
            prior.Draw(Normals.EvenPlace(i), Normals.From(place + (i * dimension), dimension), draws.Row(i));
            draws.LogLikelihoods[i] = LogLikelihood(filter, shape, draws.Row(i));
            draws.LogWeights[i] = effort.Tempering[0] * draws.LogLikelihoods[i];
        }

        return draws;
    }

    private WeightedDraws Next(CurveFilter filter, Shape shape, Mixture prior, WeightedDraws before, double tempering, int place)
    {
        var dimension = shape.Parameters.Length + Prior.Extra;
        var (mean, covariance) = before.Moments();
        var proposal = new GaussianComponent(1, mean, covariance * BeliefSettings.Widening);
        var draws = new WeightedDraws(effort.LaterDraws, dimension);
        const double fromPrior = 1.0 / BeliefSettings.PriorEvery;
        for (var i = 0; i < draws.Count; i++)
        {
            var row = draws.Row(i);
            var normals = Normals.From(place + (i * dimension), dimension);
            if (i % BeliefSettings.PriorEvery == 0)
            {
                prior.Draw(Normals.EvenPlace(i), normals, row);
            }
            else
            {
                proposal.Draw(normals, row);
            }

            var logPrior = prior.LogDensity(row);
            var logProposal = Math.Log(((1 - fromPrior) * Math.Exp(proposal.LogDensity(row) - logPrior)) + fromPrior) + logPrior;
            draws.LogLikelihoods[i] = LogLikelihood(filter, shape, row);
            draws.LogWeights[i] = (tempering * draws.LogLikelihoods[i]) + logPrior - logProposal;
        }

        return draws;
    }

    private static double LogLikelihood(CurveFilter filter, Shape shape, ReadOnlySpan<double> row)
    {
        var shapeParameters = row[..shape.Parameters.Length];
        var timeConstant = Math.Exp(row[^2]);
        filter.Prepare(shape, shapeParameters, timeConstant);
        return filter.LogLikelihood(timeConstant, Math.Exp(row[^1]), default, default);
    }
}
