using Viscolog.Core.Fitting;

namespace Viscolog.Benchmarks.Beside;

/// <summary>The four-parameter logistic curve a + b/(1 + exp(−(z − c)/d)) by the project's own least squares.</summary>
internal sealed class FourParameters((double Z, double U)[] series) : ResidualProblem(4, series.Length)
{
    /// <summary>Fits from the start that all sides have.</summary>
    public double[] Fit()
    {
        var (least, most) = (series.Min(p => p.U), series.Max(p => p.U));
        return [.. ((FitOutcome.Converged)LeastSquares.Fit(this, [least, most - least, 0.5, 0.1])).Parameters];
    }

    /// <inheritdoc/>
    public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        for (var i = 0; i < series.Length; i++)
        {
            residuals[i] = series[i].U - parameters[0] - (parameters[1] / (1 + Math.Exp(-(series[i].Z - parameters[2]) / parameters[3])));
        }
    }
}
