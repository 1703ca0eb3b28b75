using Viscolog.Core.Fitting;

namespace Viscolog.Benchmarks.Beside;

/// <summary>The law of Herschel and Bulkley, τ₀ + K·γⁿ, with relative errors, by the project's own least squares.</summary>
internal sealed class YieldAndPower((double Rate, double Stress)[] points) : ResidualProblem(3, points.Length)
{
    /// <summary>Fits from the start that all sides have.</summary>
    public double[] Fit()
        => [.. ((FitOutcome.Converged)LeastSquares.Fit(this, [points.Min(p => p.Stress) / 2, 1, 0.5])).Parameters];

    /// <inheritdoc/>
    public override void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals)
    {
        for (var i = 0; i < points.Length; i++)
        {
            var law = parameters[0] + (parameters[1] * Math.Pow(points[i].Rate, parameters[2]));
            residuals[i] = (points[i].Stress - law) / points[i].Stress;
        }
    }
}
