using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace Viscolog.Core.Sampling;

/// <summary>A weighted sum of normal distributions over one shape's parameters; the weights need not sum to one.</summary>
internal sealed class Mixture(ImmutableArray<GaussianComponent> components)
{
    private readonly double _total = components.Sum(c => c.Weight);

    /// <summary>The sum of the weights: the shape's own weight in a prior over shapes.</summary>
    public double Total => _total;

    /// <summary>A draw; the component is chosen by <paramref name="place"/> in [0, 1).</summary>
    public void Draw(double place, ReadOnlySpan<double> normals, Span<double> draw)
    {
        var left = place * _total;
        var i = 0;
        while (i < components.Length - 1 && left >= components[i].Weight)
        {
            left -= components[i].Weight;
            i++;
        }

        components[i].Draw(normals, draw);
    }

    /// <summary>The part of the density at a place that the first component makes.</summary>
    public double PartOfFirst(ReadOnlySpan<double> at)
    {
        var first = Math.Log(components[0].Weight / _total) + components[0].LogDensity(at);
        return Math.Min(1, Math.Exp(first - LogDensity(at)));
    }

    /// <summary>The logarithm of the normalised density.</summary>
    public double LogDensity(ReadOnlySpan<double> at)
    {
        if (components.Length == 1)
        {
            return components[0].LogDensity(at);
        }

        var greatest = double.NegativeInfinity;
        Span<double> logs = stackalloc double[components.Length];
        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] = Math.Log(components[i].Weight / _total) + components[i].LogDensity(at);
            greatest = Math.Max(greatest, logs[i]);
        }

        var sum = 0.0;
        foreach (var log in logs)
        {
            sum += Math.Exp(log - greatest);
        }

        return greatest + Math.Log(sum);
    }
}

/// <summary>A normal distribution with a weight, in a form that is quick to draw from and to evaluate.</summary>
internal sealed class GaussianComponent
{
    private const double LnRootTwoPi = 0.918938533204672742;
    private readonly double[] _mean;
    private readonly double[] _factor;
    private readonly double _logNormalization;

    /// <summary>Makes one from its moments; a covariance that is not positive definite is mended by a growing ridge.</summary>
    public GaussianComponent(double weight, double[] mean, Matrix<double> covariance)
    {
        _mean = mean;
        (Weight, Covariance) = (weight, covariance);
        var n = mean.Length;
        _factor = Factor(covariance, n);
        _logNormalization = -n * LnRootTwoPi;
        for (var i = 0; i < n; i++)
        {
            _logNormalization -= Math.Log(_factor[(i * n) + i]);
        }
    }

    /// <summary>A component whose parameters are independent.</summary>
    public static GaussianComponent Independent(double weight, double[] mean, double[] sd)
        => new(weight, mean, Matrix<double>.Build.DenseOfDiagonalArray([.. sd.Select(s => s * s)]));

    /// <summary>The component's weight in its mixture.</summary>
    public double Weight { get; }

    /// <summary>Its mean.</summary>
    public double[] Mean => _mean;

    /// <summary>Its covariance.</summary>
    public Matrix<double> Covariance { get; }

    /// <summary>Turns standard normal numbers into a draw.</summary>
    public void Draw(ReadOnlySpan<double> normals, Span<double> draw)
    {
        var n = _mean.Length;
        for (var i = 0; i < n; i++)
        {
            var sum = _mean[i];
            for (var j = 0; j <= i; j++)
            {
                sum += _factor[(i * n) + j] * normals[j];
            }

            draw[i] = sum;
        }
    }

    /// <summary>The logarithm of the density, the weight left out.</summary>
    public double LogDensity(ReadOnlySpan<double> at)
    {
        var n = _mean.Length;
        Span<double> solved = stackalloc double[n];
        var squares = 0.0;
        for (var i = 0; i < n; i++)
        {
            var sum = at[i] - _mean[i];
            for (var j = 0; j < i; j++)
            {
                sum -= _factor[(i * n) + j] * solved[j];
            }

            solved[i] = sum / _factor[(i * n) + i];
            squares += solved[i] * solved[i];
        }

        return _logNormalization - (0.5 * squares);
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
