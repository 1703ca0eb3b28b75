namespace Viscolog.Core.Fitting;

/// <summary>A problem whose evaluations are counted and whose values are checked before anything else sees them.</summary>
internal sealed class BudgetedProblem(ResidualProblem problem, double[] start, int budget)
{
    private readonly double[] _sizes = Array.ConvertAll(start, value => Math.Max(1e-3 * Math.Abs(value), 1e-10));

    private int _limit;
    private int _evaluationsOfSearch;

    /// <summary>
    /// The least size to take a parameter for: one that passes 0 keeps a thousandth of its start, one that starts at 0 gets a size far
    /// below any unit in use.
    /// </summary>
    public IReadOnlyList<double> Sizes => _sizes;

    public int ParameterCount => problem.ParameterCount;

    public int ResidualCount => problem.ResidualCount;

    public int Evaluations { get; private set; }

    /// <summary>Whether the evaluations of the current attempt are used up.</summary>
    public bool IsSpent => _evaluationsOfSearch >= _limit;

    /// <summary>Allows at most this many further evaluations, within the whole budget.</summary>
    public void Allow(int further) => _limit = Math.Min(budget, _evaluationsOfSearch + further);

    /// <summary>The point, or null where a residual or the sum of squares is not finite.</summary>
    public FitPoint? Evaluate(double[] parameters)
    {
        var residuals = new double[ResidualCount];
        _evaluationsOfSearch++;
        double sum = Residuals(parameters, residuals);
        return double.IsFinite(sum) ? new FitPoint(parameters, residuals, sum) : null;
    }

    /// <summary>Writes the residuals and returns their sum of squares; not finite where any of them is not.</summary>
    public double Residuals(double[] parameters, double[] residuals)
    {
        foreach (double parameter in parameters)
        {
            if (!double.IsFinite(parameter))
            {
                return double.NaN;
            }
        }

        Evaluations++;
        problem.Residuals(parameters, residuals);
        double sum = 0;
        foreach (double residual in residuals)
        {
            sum += residual * residual;
        }

        return sum;
    }

    /// <summary>The derivatives at a point, or null where one is not finite.</summary>
    public double[,]? Jacobian(FitPoint point)
    {
        var jacobian = new double[ResidualCount, ParameterCount];
        if (!problem.TryJacobian(point.Parameters, jacobian) && !CentralDifference.TryFill(this, point, _sizes, jacobian))
        {
            return null;
        }

        foreach (double value in jacobian)
        {
            if (!double.IsFinite(value))
            {
                return null;
            }
        }

        return jacobian;
    }
}
