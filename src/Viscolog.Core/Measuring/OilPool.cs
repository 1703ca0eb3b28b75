using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Measuring;

/// <summary>
/// The bias of a method from several readings of certified oils: generalised least squares for one mean (Aitken 1935; JCGM 102:2011 calls
/// it so, from memory). Two readings of one oil share what its certificate and its temperature coefficient leave open; the repeatability is
/// each reading's own. So a reading that is added can only lessen the uncertainty.
/// </summary>
internal sealed class OilPool
{
    private readonly double _repeatability;

    private OilPool(ImmutableArray<OilReading> readings, double repeatability, double bias, double sd)
        => (Readings, _repeatability, Bias, Sd) = (readings, repeatability, bias, sd);

    /// <summary>The readings in it.</summary>
    public ImmutableArray<OilReading> Readings { get; }

    /// <summary>Their ln(read/certified), weighed.</summary>
    public double Bias { get; }

    /// <summary>Its standard uncertainty.</summary>
    public double Sd { get; }

    /// <summary>Pools readings; one at least.</summary>
    public static OilPool Of(ImmutableArray<OilReading> readings, Percentage repeatability) => Of(readings, repeatability.Fraction);

    /// <summary>Whether other readings differ from these by no more than so many standard uncertainties of the difference.</summary>
    public bool Agrees(IReadOnlyList<OilReading> others, double most)
    {
        ImmutableArray<OilReading> all = [.. Readings, .. others];
        var other = Of([.. others], _repeatability);
        var weights = Vector.Build.DenseOfEnumerable(
            Weights(Readings, _repeatability).Concat(Weights(other.Readings, _repeatability).Select(w => -w)));
        var sd = Math.Sqrt(weights * (Covariance(all, _repeatability) * weights));
        return Math.Abs(Bias - other.Bias) <= most * sd;
    }

    private static OilPool Of(ImmutableArray<OilReading> readings, double repeatability)
    {
        var weights = Vector.Build.DenseOfEnumerable(Weights(readings, repeatability));
        var bias = weights * Vector.Build.DenseOfEnumerable(readings.Select(r => r.Deviation.Ln));
        return new(readings, repeatability, bias, Math.Sqrt(weights * (Covariance(readings, repeatability) * weights)));
    }

    private static Vector<double> Weights(ImmutableArray<OilReading> readings, double repeatability)
    {
        var ones = Vector.Build.Dense(readings.Length, 1);
        var solved = Covariance(readings, repeatability).Cholesky().Solve(ones);
        return solved / solved.Sum();
    }

    private static Matrix<double> Covariance(ImmutableArray<OilReading> readings, double repeatability)
    {
        // A method without scatter would leave the matrix singular; nothing repeats better than this.
        var own = Math.Max(repeatability, 1e-6);
        return Matrix.Build.Dense(readings.Length, readings.Length, (i, j) =>
        {
            var (left, right) = (readings[i], readings[j]);
            var shared = left.Oil != right.Oil ? 0
                : (left.Oil.Uncertainty.Fraction * right.Oil.Uncertainty.Fraction) + (left.TemperatureSd * right.TemperatureSd);
            return shared + (i == j ? own * own : 0);
        });
    }
}
