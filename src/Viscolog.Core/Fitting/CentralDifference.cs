namespace Viscolog.Core.Fitting;

/// <summary>
/// Derivatives by central differences, for problems that bring none. The step follows the parameter; where the residuals don't move enough
/// for the difference to stand clear of rounding, because the parameter happens to be near 0, the step grows.
/// </summary>
internal sealed class CentralDifference
{
    // The cube root of the rounding unit balances rounding against the neglected third derivative (common practice).
    private const double Relative = 6.055454452393343e-06;

    // Beside this share of the largest term in the residuals, rounding is small enough.
    private const double Clear = 1e-7;

    private const double LongestStep = 1e-3;
    private const int Sweeps = 8;

    private readonly BudgetedProblem _problem;
    private readonly FitPoint _point;
    private readonly double[,] _jacobian;
    private readonly double[] _moved;
    private readonly double[] _above;
    private readonly double[] _below;
    private double _largestTerm;

    private CentralDifference(BudgetedProblem problem, FitPoint point, double[,] jacobian)
    {
        _problem = problem;
        _point = point;
        _jacobian = jacobian;
        _moved = (double[])point.Parameters.Clone();
        _above = new double[point.Residuals.Length];
        _below = new double[point.Residuals.Length];
        foreach (double residual in point.Residuals)
        {
            _largestTerm = Math.Max(_largestTerm, Math.Abs(residual));
        }
    }

    /// <summary>Fills the derivatives; false where the problem has no finite values on both sides of the point.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="point">Where.</param>
    /// <param name="sizes">The least size to take a parameter for when its step is chosen.</param>
    /// <param name="jacobian">Residuals by parameters, to be filled.</param>
    public static bool TryFill(BudgetedProblem problem, FitPoint point, IReadOnlyList<double> sizes, double[,] jacobian)
    {
        var difference = new CentralDifference(problem, point, jacobian);
        int k = point.Parameters.Length;
        var steps = new double[k];
        var changes = new double[k];
        for (int j = 0; j < k; j++)
        {
            steps[j] = Relative * Math.Max(Math.Abs(point.Parameters[j]), sizes[j]);
            if (!difference.TryNear(j, ref steps[j], out changes[j]))
            {
                return false;
            }
        }

        // Only now is it known how large the terms of the residuals are that a difference must stand clear of.
        for (int j = 0; j < k; j++)
        {
            difference.Lengthen(j, steps[j], changes[j]);
        }

        return true;
    }

    /// <summary>Comes closer until both sides are finite: the point may lie near the edge of the problem's domain.</summary>
    private bool TryNear(int j, ref double step, out double change)
    {
        change = double.NaN;
        for (int sweep = 0; sweep < Sweeps; sweep++)
        {
            if (TryStep(j, step, out change))
            {
                Write(j, step);
                return true;
            }

            step /= 10;
        }

        return false;
    }

    private void Lengthen(int j, double step, double change)
    {
        for (int sweep = 0; sweep < Sweeps && change < Clear * _largestTerm; sweep++)
        {
            step *= 100;
            if (step > LongestStep * Math.Max(1, Math.Abs(_point.Parameters[j])) || !TryStep(j, step, out change))
            {
                return;
            }

            Write(j, step);
        }
    }

    private bool TryStep(int j, double step, out double change)
    {
        double here = _point.Parameters[j];
        _moved[j] = here + step;
        bool isFinite = double.IsFinite(_problem.Residuals(_moved, _above));
        _moved[j] = here - step;
        isFinite &= double.IsFinite(_problem.Residuals(_moved, _below));
        _moved[j] = here;
        change = 0;
        for (int i = 0; i < _above.Length; i++)
        {
            change = Math.Max(change, Math.Abs(_above[i] - _below[i]));
        }

        return isFinite;
    }

    private void Write(int j, double step)
    {
        double here = _point.Parameters[j];
        double width = here + step - (here - step);
        for (int i = 0; i < _above.Length; i++)
        {
            double slope = (_above[i] - _below[i]) / width;
            _jacobian[i, j] = slope;
            _largestTerm = Math.Max(_largestTerm, Math.Abs(slope * here));
        }
    }
}
