using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Viscolog.Core.Fitting;

/// <summary>
/// One run of MathNet's Levenberg–Marquardt from a known point, in coordinates u with parameters = origin + T u and residuals divided by
/// their length at the origin. There MathNet's absolute tolerances are relative ones, its test of the step against the squared length of
/// the parameters can't stop it early, and its damping, the same for every coordinate, treats all parameters alike.
/// </summary>
internal sealed class ScaledPass
{
    // Any sum above the start's makes MathNet reject a trial. A bounded stand-in for non-finite or huge values keeps its inner loop finite.
    private const double RejectedSum = 1e4;

    private const double LargestSlope = 1e30;

    private const double InitialDamping = 1e-3;
    private const double GradientTolerance = 1e-10;
    private const double StepTolerance = 1e-14;

    private readonly BudgetedProblem _problem;
    private readonly FitPoint _origin;
    private readonly double[,] _transform;
    private readonly double _norm;
    private FitPoint? _trial;
    private bool _isEnded;
    private bool _isInProblem;

    private ScaledPass(BudgetedProblem problem, FitPoint origin, double[,] transform)
    {
        _problem = problem;
        _origin = origin;
        _transform = transform;
        _norm = Math.Sqrt(origin.SumOfSquares);
        Best = origin;
    }

    private FitPoint Best { get; set; }

    /// <summary>The best point seen; the origin itself where nothing was better.</summary>
    public static FitPoint Run(BudgetedProblem problem, FitPoint origin, double[,] transform, int iterations)
    {
        if (origin.SumOfSquares == 0)
        {
            return origin;
        }

        var pass = new ScaledPass(problem, origin, transform);
        Vector<double> zeros = Vector<double>.Build.Dense(problem.ResidualCount);
        Func<Vector<double>, Vector<double>, Vector<double>> values = pass.Values;
        Func<Vector<double>, Vector<double>, Matrix<double>> derivatives = pass.Derivatives;
        IObjectiveModel objective = ObjectiveFunction.NonlinearModel(values, derivatives, zeros, zeros);
        var minimizer = new LevenbergMarquardtMinimizer(InitialDamping, GradientTolerance, StepTolerance, 0, iterations);
        try
        {
            minimizer.FindMinimum(objective, new double[problem.ParameterCount]);
        }
        catch (OperationCanceledException) when (pass._isEnded)
        {
            // The pass was ended from inside.
        }
        catch (Exception fault) when (!pass._isInProblem && IsNumerical(fault))
        {
            // MathNet throws on singular algebra and non-finite steps; the best point is kept all the same.
        }

        return pass.Best;
    }

    private static bool IsNumerical(Exception fault) => fault is ArgumentException or ArithmeticException or InvalidOperationException
        or NonConvergenceException or NumericalBreakdownException or SingularUMatrixException;

    private Vector<double> Values(Vector<double> u, Vector<double> unused)
    {
        if (_problem.IsSpent)
        {
            throw End();
        }

        _isInProblem = true;
        _trial = _problem.Evaluate(Parameters(u));
        _isInProblem = false;
        Vector<double> scaled = Vector<double>.Build.Dense(_problem.ResidualCount);
        if (_trial is null || _trial.SumOfSquares / _origin.SumOfSquares >= RejectedSum)
        {
            _trial = null;
            scaled.Clear();
            scaled[0] = Math.Sqrt(RejectedSum);
            return scaled;
        }

        for (int i = 0; i < scaled.Count; i++)
        {
            scaled[i] = _trial.Residuals[i] / _norm;
        }

        if (_trial.SumOfSquares < Best.SumOfSquares)
        {
            Best = _trial;
        }

        return scaled;
    }

    private Matrix<double> Derivatives(Vector<double> u, Vector<double> unused)
    {
        // MathNet asks for derivatives where it accepted a step. Where that is not an improvement, its algebra has gone astray.
        if (_trial is null || _trial.SumOfSquares > Best.SumOfSquares)
        {
            throw End();
        }

        _isInProblem = true;
        double[,]? jacobian = _problem.Jacobian(_trial);
        _isInProblem = false;
        if (jacobian is null)
        {
            throw End();
        }

        int k = _problem.ParameterCount;
        Matrix<double> scaled = Matrix<double>.Build.Dense(_problem.ResidualCount, k);
        for (int i = 0; i < _problem.ResidualCount; i++)
        {
            for (int j = 0; j < k; j++)
            {
                double sum = 0;
                for (int m = 0; m <= j; m++)
                {
                    sum += jacobian[i, m] * _transform[m, j];
                }

                // Beyond this MathNet's singular values, which it computes at the end of every run, can loop for ever.
                if (!(Math.Abs(sum / _norm) < LargestSlope))
                {
                    throw End();
                }

                scaled[i, j] = sum / _norm;
            }
        }

        return scaled;
    }

    private double[] Parameters(Vector<double> u)
    {
        var parameters = (double[])_origin.Parameters.Clone();
        for (int j = 0; j < parameters.Length; j++)
        {
            for (int m = j; m < parameters.Length; m++)
            {
                parameters[j] += _transform[j, m] * u[m];
            }
        }

        return parameters;
    }

    private OperationCanceledException End()
    {
        _isEnded = true;
        return new OperationCanceledException();
    }
}
