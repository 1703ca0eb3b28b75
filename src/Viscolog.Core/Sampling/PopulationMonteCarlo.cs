using System.Collections.Immutable;

namespace Viscolog.Core.Sampling;

/// <summary>
/// Population Monte Carlo (Cappé, Guillin, Marin and Robert, Journal of Computational and Graphical Statistics 13 (2004) 907–929): draws
/// from the prior are weighted by a tempered likelihood, a normal distribution is fitted to them, widened and mixed with the prior, and
/// drawn from anew.
/// Kinds that have fallen far behind are not drawn from anew: their weight is next to nil. Kinds are drawn side by side; what comes out
/// does not depend on it.
/// </summary>
/// <param name="effort">How many draws and rounds.</param>
internal sealed class PopulationMonteCarlo(SamplingEffort effort)
{
    /// <summary>How far behind the best, in ln of evidence, a kind is left after each round; the early rounds judge roughly.</summary>
    private static readonly ImmutableArray<double> Behind = [14, 9, 7];

    /// <summary>A draw that is so far behind, in ln of weight, is lost in the rounding of the others.</summary>
    private const double Nothing = 45;

    /// <summary>For each kind the last round's draws, weighted by likelihood, prior and proposal.</summary>
    /// <param name="kinds">The kinds.</param>
    public WeightedSample[] Draw(ImmutableArray<SampledFamily> kinds)
    {
        var draws = new WeightedSample[kinds.Length];
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
    private void Leave(WeightedSample[] draws, bool[] left, ImmutableArray<SampledFamily> kinds, int round)
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

    private WeightedSample First(SampledFamily kind)
    {
        var logLikelihood = kind.Likelihood();
        var draws = new WeightedSample(effort.FirstDraws, kind.Dimension);
        var best = double.NegativeInfinity;
        for (var i = 0; i < draws.Count; i++)
        {
            kind.Prior.Draw(Normals.EvenPlace(i), Normals.From(kind.Place + (i * kind.Dimension), kind.Dimension), draws.Row(i));
            draws.LogLikelihoods[i] = logLikelihood(draws.Row(i), (best - Nothing) / effort.Tempering[0]);
            draws.LogWeights[i] = effort.Tempering[0] * draws.LogLikelihoods[i];
            best = Math.Max(best, draws.LogWeights[i]);
        }

        return draws;
    }

    private WeightedSample Next(SampledFamily kind, WeightedSample before, int round)
    {
        var (dimension, prior, place, logLikelihood) = (kind.Dimension, kind.Prior, kind.Place + (7919 * round), kind.Likelihood());
        var (mean, covariance) = before.Moments();
        var proposal = new GaussianComponent(1, mean, covariance * MonteCarloSettings.Widening);
        var draws = new WeightedSample(effort.LaterDraws, dimension);
        const double fromPrior = 1.0 / MonteCarloSettings.PriorEvery;
        var best = double.NegativeInfinity;
        for (var i = 0; i < draws.Count; i++)
        {
            var row = draws.Row(i);
            var normals = Normals.From(place + (i * dimension), dimension);
            if (i % MonteCarloSettings.PriorEvery == 0)
            {
                prior.Draw(Normals.EvenPlace(i), normals, row);
            }
            else
            {
                proposal.Draw(normals, row);
            }

            var logPrior = prior.LogDensity(row);
            var logProposal = Math.Log(((1 - fromPrior) * Math.Exp(proposal.LogDensity(row) - logPrior)) + fromPrior) + logPrior;
            var ratio = logPrior - logProposal;
            draws.LogLikelihoods[i] = logLikelihood(row, (best - Nothing - ratio) / effort.Tempering[round]);
            draws.LogWeights[i] = (effort.Tempering[round] * draws.LogLikelihoods[i]) + ratio;
            best = Math.Max(best, draws.LogWeights[i]);
        }

        return draws;
    }
}

/// <summary>One kind of draw, mostly one shape's.</summary>
/// <param name="Dimension">How many numbers a draw has.</param>
/// <param name="Prior">Their prior; its total is the kind's weight over all kinds.</param>
/// <param name="Likelihood">Makes the log likelihood of a draw, each with a workspace of its own.</param>
/// <param name="Place">Where in the table of random numbers to begin.</param>
internal sealed record SampledFamily(int Dimension, Mixture Prior, Func<LogLikelihoodOf> Likelihood, int Place);

/// <summary>
/// How likely the readings are under one draw of parameters, as a logarithm up to a constant; negative infinity where they can't be.
/// </summary>
/// <param name="draw">The draw.</param>
/// <param name="least">The log likelihood below which the draw counts for nothing: negative infinity may be answered then.</param>
internal delegate double LogLikelihoodOf(ReadOnlySpan<double> draw, double least);

/// <summary>How much work a posterior is worth.</summary>
/// <param name="FirstDraws">Draws a shape in the first round.</param>
/// <param name="LaterDraws">Draws a shape in each later round.</param>
/// <param name="Kept">Draws that the finished posterior keeps.</param>
/// <param name="Tempering">How much of the likelihood each round counts; the last is 1.</param>
internal sealed record SamplingEffort(int FirstDraws, int LaterDraws, int Kept, ImmutableArray<double> Tempering)
{
    /// <summary>For the run that is advised on.</summary>
    public static SamplingEffort Full { get; } = new(2000, 1000, MonteCarloSettings.Draws, [0.1, 0.3, 0.6, 1]);

    /// <summary>For an earlier run, of which moments are wanted only.</summary>
    public static SamplingEffort Moments { get; } = new(400, 200, 50, [0.1, 0.4, 1]);
}
