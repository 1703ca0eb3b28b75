using MathNet.Numerics.LinearAlgebra;

namespace Viscolog.Core.Curves;

/// <summary>A normal distribution with a weight, in a form that is quick to draw from and to evaluate.</summary>
internal sealed class GaussianComponent
{
    private const double LnRootTwoPi = 0.918938533204672742;
    private readonly double[] mean;
    private readonly double[] factor;
    private readonly double logNormalization;

    /// <summary>Makes one from its moments; a covariance that is not positive definite is mended by a growing ridge.</summary>
    public GaussianComponent(double weight, double[] mean, Matrix<double> covariance)
    {
        this.mean = mean;
        (Weight, Covariance) = (weight, covariance);
        var n = mean.Length;
        factor = Factor(covariance, n);
        logNormalization = -n * LnRootTwoPi;
        for (var i = 0; i < n; i++)
        {
            logNormalization -= Math.Log(factor[(i * n) + i]);
        }
    }

    /// <summary>The component's weight in its mixture.</summary>
    public double Weight { get; }

    /// <summary>Its mean.</summary>
    public double[] Mean => mean;

    /// <summary>Its covariance.</summary>
    public Matrix<double> Covariance { get; }

    /// <summary>Turns standard normal numbers into a draw.</summary>
    public void Draw(ReadOnlySpan<double> normals, Span<double> draw)
    {
        var n = mean.Length;
        for (var i = 0; i < n; i++)
        {
            var sum = mean[i];
            for (var j = 0; j <= i; j++)
            {
                sum += factor[(i * n) + j] * normals[j];
            }

            draw[i] = sum;
        }
    }

    /// <summary>The logarithm of the density, the weight left out.</summary>
    public double LogDensity(ReadOnlySpan<double> at)
    {
        var n = mean.Length;
        Span<double> solved = stackalloc double[n];
        var squares = 0.0;
        for (var i = 0; i < n; i++)
        {
            var sum = at[i] - mean[i];
            for (var j = 0; j < i; j++)
            {
                sum -= factor[(i * n) + j] * solved[j];
            }

            solved[i] = sum / factor[(i * n) + i];
            squares += solved[i] * solved[i];
        }

        return logNormalization - (0.5 * squares);
    }

    private static double[] Factor(Matrix<double> covariance, int n)
    {
        for (var ridge = 1e-8; ; ridge *= 100)
        {
            try
            {
                var lower = (covariance + (ridge * Matrix<double>.Build.DenseIdentity(n))).Cholesky().Factor;
                return lower.ToRowMajorArray();
            }
            catch (ArgumentException) when (ridge < 1e6)
            {
                // Not positive definite: the weighted draws lie in a plane; a larger ridge lifts them out of it.
            }
        }
    }
}
