namespace Viscolog.Core.Fitting;

/// <summary>
/// What <see cref="LeastSquares"/> minimises: the sum of squared residuals as a function of a few parameters.
/// Rows come in two kinds, data first: one row a reading, then (optionally) one row a weak prior, (θ − mean) / spread.
/// With prior rows every row must be in units of its own standard deviation.
/// </summary>
public abstract class ResidualProblem
{
    /// <summary>States the size of the problem.</summary>
    /// <param name="parameterCount">Free parameters; at least 1.</param>
    /// <param name="dataCount">Rows that are data; at least 0.</param>
    /// <param name="priorCount">Rows that are priors, after the data; at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is below its least value.</exception>
    protected ResidualProblem(int parameterCount, int dataCount, int priorCount = 0)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(parameterCount, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(dataCount);
        ArgumentOutOfRangeException.ThrowIfNegative(priorCount);
        ParameterCount = parameterCount;
        DataCount = dataCount;
        PriorCount = priorCount;
    }

    /// <summary>Free parameters.</summary>
    public int ParameterCount { get; }

    /// <summary>Rows that are data. Degrees of freedom count these alone.</summary>
    public int DataCount { get; }

    /// <summary>Rows that are priors; they follow the data rows.</summary>
    public int PriorCount { get; }

    /// <summary>All rows.</summary>
    public int ResidualCount => DataCount + PriorCount;

    /// <summary>
    /// Writes the residuals at <paramref name="parameters"/>. A value that is not finite is allowed: it says "not here", and the
    /// search steps back.
    /// </summary>
    /// <param name="parameters">One value a parameter; finite.</param>
    /// <param name="residuals">One place a row; every one must be written.</param>
    public abstract void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals);

    /// <summary>
    /// Writes the derivatives of the residuals, one row a residual and one column a parameter. The default returns false:
    /// then central differences stand in, at two evaluations a parameter.
    /// </summary>
    /// <param name="parameters">One value a parameter; finite.</param>
    /// <param name="jacobian">Residuals by parameters; every place must be written when true is returned.</param>
    /// <returns>Whether the derivatives were written.</returns>
    public virtual bool TryJacobian(ReadOnlySpan<double> parameters, double[,] jacobian) => false;
}
