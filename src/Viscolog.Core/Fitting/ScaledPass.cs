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

    private readonly BudgetedProblem problem;
    private readonly FitPoint origin;
    private readonly double[,] transform;
    private readonly double norm;
    private FitPoint? trial;
    private bool isEnded;
    private bool isInProblem;

    private ScaledPass(BudgetedProblem problem, FitPoint origin, double[,] transform)
    {
        this.problem = problem;
        this.origin = origin;
        this.transform = transform;
        norm = Math.Sqrt(origin.SumOfSquares);
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
        catch (OperationCanceledException) when (pass.isEnded)
        {
            // The pass was ended from inside.
        }
        catch (Exception fault) when (!pass.isInProblem && IsNumerical(fault))
        {
            // MathNet throws on singular algebra and non-finite steps; the best point is kept all the same.
        }

        return pass.Best;
    }

    private static bool IsNumerical(Exception fault) => fault is ArgumentException or ArithmeticException or InvalidOperationException
        or NonConvergenceException or NumericalBreakdownException or SingularUMatrixException;

    private Vector<double> Values(Vector<double> u, Vector<double> unused)
    {
        if (problem.IsSpent)
        {
            throw End();
        }

        isInProblem = true;
        trial = problem.Evaluate(Parameters(u));
        isInProblem = false;
        Vector<double> scaled = Vector<double>.Build.Dense(problem.ResidualCount);
        if (trial is null || trial.SumOfSquares / origin.SumOfSquares >= RejectedSum)
        {
            trial = null;
            scaled.Clear();
            scaled[0] = Math.Sqrt(RejectedSum);
            return scaled;
        }

        for (int i = 0; i < scaled.Count; i++)
        {
            scaled[i] = trial.Residuals[i] / norm;
        }

        if (trial.SumOfSquares < Best.SumOfSquares)
        {
            Best = trial;
        }

        return scaled;
    }

    private Matrix<double> Derivatives(Vector<double> u, Vector<double> unused)
    {
        // MathNet asks for derivatives where it accepted a step. Where that is not an improvement, its algebra has gone astray.
        if (trial is null || trial.SumOfSquares > Best.SumOfSquares)
        {
            throw End();
        }

        isInProblem = true;
        double[,]? jacobian = problem.Jacobian(trial);
        isInProblem = false;
        if (jacobian is null)
        {
            throw End();
        }

        int k = problem.ParameterCount;
        Matrix<double> scaled = Matrix<double>.Build.Dense(problem.ResidualCount, k);
        for (int i = 0; i < problem.ResidualCount; i++)
        {
            for (int j = 0; j < k; j++)
            {
                double sum = 0;
                for (int m = 0; m <= j; m++)
                {
                    sum += jacobian[i, m] * transform[m, j];
                }

                // Beyond this MathNet's singular values, which it computes at the end of every run, can loop for ever.
                if (!(Math.Abs(sum / norm) < LargestSlope))
                {
                    throw End();
                }

                scaled[i, j] = sum / norm;
            }
        }

        return scaled;
    }

    private double[] Parameters(Vector<double> u)
    {
        var parameters = (double[])origin.Parameters.Clone();
        for (int j = 0; j < parameters.Length; j++)
        {
            for (int m = j; m < parameters.Length; m++)
            {
                parameters[j] += transform[j, m] * u[m];
            }
        }

        return parameters;
    }

    private OperationCanceledException End()
    {
        isEnded = true;
        return new OperationCanceledException();
    }
}
