namespace Viscolog.Core.Curves;

/// <summary>
/// Population Monte Carlo (Cappé, Guillin, Marin and Robert, Journal of Computational and Graphical Statistics 13 (2004) 907–929): draws
/// from the prior are weighted by a tempered likelihood, a normal distribution is fitted to them, widened and mixed with the prior, and drawn from anew.
/// </summary>
internal sealed class PopulationMonteCarlo(CurveFilter filter)
{
    /// <summary>The last round's draws of one shape, weighted by likelihood, prior and proposal.</summary>
    /// <param name="shape">The shape.</param>
    /// <param name="prior">Its prior.</param>
    /// <param name="place">Where in the table of random numbers to begin.</param>
    public WeightedDraws Draw(Shape shape, Mixture prior, int place)
    {
        var dimension = shape.Parameters.Length + Prior.Extra;
        var draws = new WeightedDraws(BeliefSettings.FirstDraws, dimension);
        for (var i = 0; i < draws.Count; i++)
        {
            prior.Draw(Normals.EvenPlace(i), Normals.From(place + (i * dimension), dimension), draws.Row(i));
            draws.LogWeights[i] = BeliefSettings.Tempering[0] * LogLikelihood(shape, draws.Row(i));
        }

        for (var round = 1; round < BeliefSettings.Tempering.Length; round++)
        {
            place += 7919;
            draws = Next(shape, prior, draws, BeliefSettings.Tempering[round], place);
        }

        return draws;
    }

    private WeightedDraws Next(Shape shape, Mixture prior, WeightedDraws before, double tempering, int place)
    {
        var dimension = shape.Parameters.Length + Prior.Extra;
        var (mean, covariance) = before.Moments();
        var proposal = new GaussianComponent(1, mean, covariance * BeliefSettings.Widening);
        var draws = new WeightedDraws(BeliefSettings.LaterDraws, dimension);
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
            draws.LogWeights[i] = (tempering * LogLikelihood(shape, row)) + logPrior - logProposal;
        }

        return draws;
    }

    private double LogLikelihood(Shape shape, ReadOnlySpan<double> row)
    {
        var shapeParameters = row[..shape.Parameters.Length];
        var timeConstant = Math.Exp(row[^2]);
        filter.Prepare(shape, shapeParameters, timeConstant);
        return filter.LogLikelihood(timeConstant, Math.Exp(row[^1]), default, default);
    }
}
