namespace Viscolog.Core.Fitting;

/// <summary>
/// The uncertainty of fitted parameters: σ² (JᵀJ)⁻¹, from a QR factorisation of the Jacobian with its columns scaled to length 1.
/// Source: G. A. F. Seber and C. J. Wild, Nonlinear Regression, Wiley 1989, chapter 5 (from memory).
/// </summary>
public sealed class ParameterCovariance
{
    // JᵀJ = (R D)ᵀ(R D) with D the column lengths; this holds (R D)⁻¹, upper triangular.
    private readonly double[,] _inverse;

    internal ParameterCovariance(double[,] inverse, double? sigma)
    {
        _inverse = inverse;
        Sigma = sigma;
        StandardErrors = sigma is null ? null : [.. Enumerable.Range(0, Count).Select(j => Math.Sqrt(this[j, j]))];
    }

    /// <summary>How many parameters.</summary>
    public int Count => _inverse.GetLength(0);

    /// <summary>The residuals' standard deviation, known or estimated; null where nothing tells it.</summary>
    public double? Sigma { get; }

    /// <summary>One standard error a parameter; null where <see cref="Sigma"/> is.</summary>
    public IReadOnlyList<double>? StandardErrors { get; }

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
}
