namespace Viscolog.Core.Curves;

/// <summary>Derivatives by central differences, for problems that bring none.</summary>
internal static class CentralDifference
{
    // The cube root of the rounding unit balances rounding against the neglected third derivative (common practice).
    private const double Relative = 6.055454452393343e-06;

    // A change below this share of the largest residual is rounding, not slope: the step was too short for the parameter's scale.
    private const double Visible = 1e-9;

    private const int Tries = 6;

    /// <summary>Fills the derivatives; false where the problem has no finite value on either side of the point.</summary>
    public static bool TryFill(BudgetedProblem problem, FitPoint point, double[,] jacobian)
    {
        var above = new double[problem.ResidualCount];
        var below = new double[problem.ResidualCount];
        var moved = (double[])point.Parameters.Clone();
        for (int j = 0; j < moved.Length; j++)
        {
            if (!TryColumn(problem, point, jacobian, j, moved, above, below))
            {
                return false;
            }

            moved[j] = point.Parameters[j];
        }

        return true;
    }

    private static bool TryColumn(
        BudgetedProblem problem, FitPoint point, double[,] jacobian, int j, double[] moved, double[] above, double[] below)
    {
        double here = point.Parameters[j];
        double step = Relative * (here == 0 ? 1 : Math.Abs(here));
        bool grew = false;
        bool cornered = false;
        for (int attempt = 0; attempt < Tries; attempt++)
        {
            double high = moved[j] = here + step;
            bool finite = double.IsFinite(problem.Residuals(moved, above));
            double low = moved[j] = here - step;
            finite &= double.IsFinite(problem.Residuals(moved, below));
            if (!finite)
            {
                // Near the edge of the domain: come closer; after a growth the shorter step is all there is.
                step /= grew ? 100 : 10;
                cornered |= grew;
                continue;
            }

            double change = Write(jacobian, j, above, below, high - low);
            if (cornered || change >= Visible * Largest(point.Residuals) || step > 1e-3 * Math.Max(1, Math.Abs(here)) || attempt == Tries - 1)
            {
                return true;
            }

            step *= 100;
            grew = true;
        }

        return false;
    }

    private static double Write(double[,] jacobian, int j, double[] above, double[] below, double width)
    {
        double largest = 0;
        for (int i = 0; i < above.Length; i++)
        {
            double difference = above[i] - below[i];
            jacobian[i, j] = difference / width;
            largest = Math.Max(largest, Math.Abs(difference));
        }

        return largest;
    }

    private static double Largest(double[] values)
    {
        double largest = 0;
        foreach (double value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        return largest;
    }
}
