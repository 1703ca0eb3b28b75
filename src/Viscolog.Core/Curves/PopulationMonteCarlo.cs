using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>
/// Population Monte Carlo (Cappé, Guillin, Marin and Robert, Journal of Computational and Graphical Statistics 13 (2004) 907–929): draws
/// from the prior are weighted by a tempered likelihood, a normal distribution is fitted to them, widened and mixed with the prior, and drawn from anew.
/// Kinds that have fallen far behind are not drawn from anew: their weight is next to nil. Kinds are drawn side by side; what comes out does not depend on it.
/// </summary>
/// <param name="effort">How many draws and rounds.</param>
internal sealed class PopulationMonteCarlo(BeliefEffort effort)
{
    /// <summary>How far behind the best, in ln of evidence, a kind is left after each round; the early rounds judge roughly.</summary>
    private static readonly ImmutableArray<double> Behind = [14, 9, 7];

    /// <summary>For each kind the last round's draws, weighted by likelihood, prior and proposal.</summary>
    /// <param name="kinds">The kinds.</param>
    public WeightedDraws[] Draw(ImmutableArray<DrawKind> kinds)
    {
        var draws = new WeightedDraws[kinds.Length];
        Parallel.For(0, draws.Length, s => draws[s] = First(kinds[s]));
        var left = new bool[draws.Length];
        for (var round = 1; round < effort.Tempering.Length; round++)
        {
            Leave(draws, left, kinds, round);
            var now = round;
            Parallel.For(0, draws.Length, s =>
            {
                if (!left[s])
                {
                    draws[s] = Next(kinds[s], draws[s], now);
                }
            });
        }

        return draws;
    }

    /// <summary>Finishes the kinds that have fallen far behind with the draws they have.</summary>
    private void Leave(WeightedDraws[] draws, bool[] left, ImmutableArray<DrawKind> kinds, int round)
    {
        var more = 1 - effort.Tempering[round - 1];
        var evidence = draws.Select((d, s) => d.LogMeanWeight(left[s] ? 0 : more) + Math.Log(kinds[s].Prior.Total)).ToArray();
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

    private WeightedDraws First(DrawKind kind)
    {
        var logLikelihood = kind.Likelihood();
        var draws = new WeightedDraws(effort.FirstDraws, kind.Dimension);
        for (var i = 0; i < draws.Count; i++)
        {
            kind.Prior.Draw(Normals.EvenPlace(i), Normals.From(kind.Place + (i * kind.Dimension), kind.Dimension), draws.Row(i));
            draws.LogLikelihoods[i] = logLikelihood(draws.Row(i));
            draws.LogWeights[i] = effort.Tempering[0] * draws.LogLikelihoods[i];
        }

        return draws;
    }

    private WeightedDraws Next(DrawKind kind, WeightedDraws before, int round)
    {
        var (dimension, prior, place, logLikelihood) = (kind.Dimension, kind.Prior, kind.Place + (7919 * round), kind.Likelihood());
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
            draws.LogLikelihoods[i] = logLikelihood(row);
            draws.LogWeights[i] = (effort.Tempering[round] * draws.LogLikelihoods[i]) + logPrior - logProposal;
        }

        return draws;
    }
}
