using MathNet.Numerics.Distributions;

namespace Viscolog.Core.Fitting;

/// <summary>
/// The uncertainty of fitted parameters: σ² (JᵀJ)⁻¹, from a QR factorisation of the Jacobian with its columns scaled to length 1.
/// Source: G. A. F. Seber and C. J. Wild, Nonlinear Regression, Wiley 1989, chapter 5 (from memory).
/// </summary>
public sealed class ParameterCovariance
{
    // JᵀJ = (R D)ᵀ(R D) with D the column lengths; this holds (R D)⁻¹, upper triangular.
    private readonly double[,] _inverse;
    private readonly int _degreesOfFreedom;
    private readonly bool _isKnown;

    internal ParameterCovariance(double[,] inverse, double logDeterminant, double? sigma, bool isKnown, int degreesOfFreedom)
    {
        _inverse = inverse;
        _degreesOfFreedom = degreesOfFreedom;
        _isKnown = isKnown;
        LogDeterminantOfInformation = logDeterminant;
        Sigma = sigma;
        StandardErrors = sigma is null ? null : [.. Enumerable.Range(0, Count).Select(j => Math.Sqrt(this[j, j]))];
    }

    /// <summary>How many parameters.</summary>
    public int Count => _inverse.GetLength(0);

    /// <summary>The residuals' standard deviation, known or estimated; null where nothing tells it.</summary>
    public double? Sigma { get; }

    /// <summary>One standard error a parameter; null where <see cref="Sigma"/> is.</summary>
    public IReadOnlyList<double>? StandardErrors { get; }

    /// <summary>ln det(JᵀJ) at the minimum, prior rows included and without σ: what a Laplace evidence needs.</summary>
    public double LogDeterminantOfInformation { get; }

    /// <summary>The covariance of two parameters; not a number where <see cref="Sigma"/> is null.</summary>
    /// <exception cref="ArgumentOutOfRangeException">An index is out of range.</exception>
    public double this[int first, int second]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(first);
            ArgumentOutOfRangeException.ThrowIfNegative(second);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(first, Count);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(second, Count);
            double sum = 0;
            for (int m = Math.Max(first, second); m < Count; m++)
            {
                sum += _inverse[first, m] * _inverse[second, m];
            }

            return Sigma is { } sigma ? sigma * sigma * sum : double.NaN;
        }
    }

    /// <summary>
    /// The variance of a quantity computed from the parameters, by its derivatives with respect to them (the delta method); not a number
    /// where <see cref="Sigma"/> is null.
    /// </summary>
    /// <param name="gradient">One derivative a parameter.</param>
    /// <exception cref="ArgumentException">There is not one derivative a parameter.</exception>
    public double VarianceOf(ReadOnlySpan<double> gradient)
    {
        if (gradient.Length != Count)
        {
            throw new ArgumentException("needs one derivative a parameter", nameof(gradient));
        }

        double sum = 0;
        for (int m = 0; m < Count; m++)
        {
            double along = 0;
            for (int j = 0; j <= m; j++)
            {
                along += gradient[j] * _inverse[j, m];
            }

            sum += along * along;
        }

        return Sigma is { } sigma ? sigma * sigma * sum : double.NaN;
    }

    /// <summary>
    /// How many standard errors a two-sided interval reaches either way: Student's t on the degrees of freedom, or the normal
    /// distribution where σ is known. Not a number where <see cref="Sigma"/> is null.
    /// </summary>
    /// <param name="level">Confidence level, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is out of range.</exception>
    public double IntervalFactor(double level)
    {
        if (!(level > 0 && level < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(level), level, "must lie between 0 and 1");
        }

        double upper = 0.5 + (0.5 * level);
        if (_isKnown)
        {
            return Normal.InvCDF(0, 1, upper);
        }

        return _degreesOfFreedom switch
        {
            < 1 => double.NaN,
            // MathNet's search for this quantile fails far out; with 1 and 2 degrees of freedom it has a closed form.
            1 => Math.Tan(Math.PI * 0.5 * level),
            2 => level * Math.Sqrt(2 / ((1 - level) * (1 + level))),
            _ => StudentT.InvCDF(0, 1, _degreesOfFreedom, upper),
        };
    }
}
