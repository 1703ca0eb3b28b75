namespace Viscolog.Core.Curves;

/// <summary>
/// Population Monte Carlo (Cappé, Guillin, Marin and Robert, Journal of Computational and Graphical Statistics 13 (2004) 907–929): draws
/// from the prior are weighted by a tempered likelihood, a normal distribution is fitted to them, widened and mixed with the prior, and drawn from anew.
/// </summary>
/// <param name="dimension">How many numbers a draw has.</param>
/// <param name="logLikelihood">The log likelihood of a draw.</param>
/// <param name="first">Draws in the first round.</param>
/// <param name="later">Draws in each later round.</param>
internal sealed class PopulationMonteCarlo(int dimension, DrawLikelihood logLikelihood, int first, int later)
{
    public PopulationMonteCarlo(int dimension, DrawLikelihood logLikelihood)
        : this(dimension, logLikelihood, BeliefSettings.FirstDraws, BeliefSettings.LaterDraws)
    {
    }

    /// <summary>The last round's draws, weighted by likelihood, prior and proposal.</summary>
    /// <param name="prior">Their prior.</param>
    /// <param name="place">Where in the table of random numbers to begin.</param>
    public WeightedDraws Draw(Mixture prior, int place)
    {
        var draws = new WeightedDraws(first, dimension);
        for (var i = 0; i < draws.Count; i++)
        {
            prior.Draw(Normals.EvenPlace(i), Normals.From(place + (i * dimension), dimension), draws.Row(i));
            draws.LogWeights[i] = BeliefSettings.Tempering[0] * logLikelihood(draws.Row(i));
        }

        for (var round = 1; round < BeliefSettings.Tempering.Length; round++)
        {
            place += 7919;
            draws = Next(prior, draws, BeliefSettings.Tempering[round], place);
        }

        return draws;
    }

    private WeightedDraws Next(Mixture prior, WeightedDraws before, double tempering, int place)
    {
        var (mean, covariance) = before.Moments();
        var proposal = new GaussianComponent(1, mean, covariance * BeliefSettings.Widening);
        var draws = new WeightedDraws(later, dimension);
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
            draws.LogWeights[i] = (tempering * logLikelihood(row)) + logPrior - logProposal;
        }

        return draws;
    }
}
