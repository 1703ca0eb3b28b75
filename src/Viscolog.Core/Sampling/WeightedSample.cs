using MathNet.Numerics.LinearAlgebra;

namespace Viscolog.Core.Sampling;

/// <summary>Draws of one shape's parameters with their log likelihoods and log weights.</summary>
internal sealed class WeightedSample(int count, int dimension)
{
    /// <summary>The draws, one row after another.</summary>
    public double[] Values { get; } = new double[count * dimension];

    /// <summary>Log weights.</summary>
    public double[] LogWeights { get; } = new double[count];

    /// <summary>Log likelihoods.</summary>
    public double[] LogLikelihoods { get; } = new double[count];

    /// <summary>How many there are.</summary>
    public int Count => count;

    /// <summary>One draw.</summary>
    public Span<double> Row(int i) => Values.AsSpan(i * dimension, dimension);

    /// <summary>The logarithm of the mean weight: the shape's evidence.</summary>
    public double LogMeanWeight() => LogMeanWeight(0);

    /// <summary>The same with so much more of the likelihood counted.</summary>
    public double LogMeanWeight(double more)
    {
        var greatest = double.NegativeInfinity;
        for (var i = 0; i < count; i++)
        {
            greatest = Math.Max(greatest, LogWeight(i, more));
        }

        if (double.IsNegativeInfinity(greatest))
        {
            return greatest;
        }

        var sum = 0.0;
        for (var i = 0; i < count; i++)
        {
            sum += Math.Exp(LogWeight(i, more) - greatest);
        }

        return greatest + Math.Log(sum / count);
    }

    /// <summary>Counts so much more of the likelihood.</summary>
    public void CountMore(double more)
    {
        for (var i = 0; i < count; i++)
        {
            LogWeights[i] = LogWeight(i, more);
        }
    }

    private double LogWeight(int i, double more) => more > 0 ? LogWeights[i] + (more * LogLikelihoods[i]) : LogWeights[i];

    /// <summary>Normalised weights.</summary>
    public double[] Weights()
    {
        var greatest = LogWeights.Max();
        if (double.IsNegativeInfinity(greatest))
        {
            return [.. Enumerable.Repeat(1.0 / count, count)];
        }

        var weights = new double[count];
        var sum = 0.0;
        for (var i = 0; i < count; i++)
        {
            sum += weights[i] = Math.Exp(LogWeights[i] - greatest);
        }

        for (var i = 0; i < count; i++)
        {
            weights[i] /= sum;
        }

        return weights;
    }

    /// <summary>Weighted mean and covariance.</summary>
    public (double[] Mean, Matrix<double> Covariance) Moments()
    {
        var weights = Weights();
        var mean = new double[dimension];
        for (var i = 0; i < count; i++)
        {
            var row = Row(i);
            for (var j = 0; j < dimension; j++)
            {
                mean[j] += weights[i] * row[j];
            }
        }

        var products = new double[dimension * dimension];
        Span<double> off = stackalloc double[dimension];
        for (var i = 0; i < count; i++)
        {
            if (weights[i] <= 1e-12)
            {
                continue;
            }

            var row = Row(i);
            for (var j = 0; j < dimension; j++)
            {
                off[j] = row[j] - mean[j];
                var weighted = weights[i] * off[j];
                for (var l = 0; l <= j; l++)
                {
                    products[(j * dimension) + l] += weighted * off[l];
                }
            }
        }

        var covariance = Matrix<double>.Build.Dense(
            dimension, dimension, (j, l) => products[(Math.Max(j, l) * dimension) + Math.Min(j, l)]);
        return (mean, covariance);
    }
}
