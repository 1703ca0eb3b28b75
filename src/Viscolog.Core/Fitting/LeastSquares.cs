namespace Viscolog.Core.Fitting;

/// <summary>
/// Nonlinear least squares: MathNet's Levenberg–Marquardt, run in passes that are scaled anew, with the minimum checked here.
/// Converged means: the share of the residuals along the Jacobian's columns (which no column's cosine with the residuals exceeds) is at
/// most 1e-7 beyond rounding, no point near by is lower, the Jacobian has full rank, and no start tried has seen a lower sum of squares.
/// </summary>
/// <remarks>
/// A stationary point can be a minimum on a flat side arm only. More starts are therefore tried whenever the first fit is in doubt: it
/// isn't
/// stationary, its Jacobian is nearly singular (condition above 1e7 with columns scaled to length 1), or a parameter's standard error
/// exceeds a thousand times the parameter. First the same start again, damped in the parameters' own units; then up to 15 starts moved
/// by a seeded draw. They end when two attempts agree on the lowest sum seen. That can't prove a minimum to be the lowest: ask for
/// <see cref="FitOptions.ExtraStarts"/> where a model is known to have several (sums of peaks or waves, fractions with poles).
/// </remarks>
public static class LeastSquares
{
    private const int DoubtStarts = 16;
    private const double DoubtfulCondition = 1e7;
    private const double DoubtfulSpread = 1e3;
    private const double SameSum = 1e-8;

    /// <summary>Fits the parameters.</summary>
    /// <param name="problem">The residuals.</param>
    /// <param name="start">Where to begin, one value a parameter.</param>
    /// <param name="options">How; null for <see cref="FitOptions.Default"/>.</param>
    /// <exception cref="ArgumentException">The start or the start widths have another length than the parameters.</exception>
    public static FitOutcome Fit(ResidualProblem problem, ReadOnlySpan<double> start, FitOptions? options = null)
    {
        options ??= FitOptions.Default;
        Check(problem, start.Length, options);
        if (problem.ResidualCount < problem.ParameterCount)
        {
            var (parameters, more) = (problem.ParameterCount, problem.ParameterCount - problem.ResidualCount);
            return new FitOutcome.Impossible(
                FormattableString.Invariant($"The curve has {parameters} parameters, but there are only {problem.DataCount} readings: ")
                + FormattableString.Invariant($"take at least {more} more at other doses, or use a curve with fewer parameters."));
        }

        foreach (double value in start)
        {
            if (!double.IsFinite(value))
            {
                return new FitOutcome.Impossible("A starting value is not a finite number: check the readings that it was made from.");
            }
        }

        return Search(problem, start.ToArray(), options);
    }

    private static void Check(ResidualProblem problem, int length, FitOptions options)
    {
        ArgumentNullException.ThrowIfNull(problem);
        if (length != problem.ParameterCount)
        {
            throw new ArgumentException("needs one starting value a parameter", nameof(problem));
        }

        if (options.StartWidths is { } widths && widths.Count != problem.ParameterCount)
        {
            throw new ArgumentException("needs one start width a parameter", nameof(options));
        }
    }

    private static FitOutcome Search(ResidualProblem problem, double[] start, FitOptions options)
    {
        var budgeted = new BudgetedProblem(problem, start, options.MaximumEvaluations);
        var starts = new MovedStarts(start, options);
        budgeted.Allow(options.MaximumEvaluations / 2);
        FitAttempt? best = FitAttempt.From(budgeted, start);
        bool inDoubt = best is null || IsDoubtful(best, start, options);
        int most = Math.Max(options.ExtraStarts, inDoubt ? DoubtStarts : 0);
        int agreeing = 0;
        for (int n = 1; n <= most && (n <= options.ExtraStarts || agreeing < 2); n++)
        {
            // The first answer to doubt is the same start in the other units of damping: no draw needed, and no other minimum sought.
            budgeted.Allow(options.MaximumEvaluations / 8);
            double[] from = inDoubt && n == 1 ? start : starts.Next();
            if (FitAttempt.From(budgeted, from, isPlain: n % 2 == 1) is not { } other)
            {
                continue;
            }

            if (best is null || IsBetter(other, best))
            {
                agreeing = best is not null && IsSame(other, best) ? agreeing : 0;
                best = other;
            }

            agreeing += other.IsMinimum && IsSame(other, best) ? 1 : 0;
        }

        return best is null
            ? new FitOutcome.Impossible("The curve has no finite value at the starting values or near them: start from values that "
                + "suit the readings.")
            : Outcome(problem, budgeted, best);
    }

    private static bool IsBetter(FitAttempt other, FitAttempt best) =>
        other.Best.SumOfSquares < best.Best.SumOfSquares && !IsSame(other, best) ||
        other.IsMinimum && !best.IsMinimum && IsSame(other, best);

    private static bool IsSame(FitAttempt one, FitAttempt other) =>
        Math.Abs(one.Best.SumOfSquares - other.Best.SumOfSquares) <= SameSum * Math.Max(one.Best.SumOfSquares, other.Best.SumOfSquares);

    private static bool IsDoubtful(FitAttempt fit, double[] start, FitOptions options)
    {
        if (!fit.IsMinimum || fit.Curvature is not { Condition: <= DoubtfulCondition } curvature)
        {
            return true;
        }

        int rows = fit.Best.Residuals.Length;
        double sigma = Math.Sqrt(fit.Best.SumOfSquares / Math.Max(1, rows - start.Length));
        for (int j = 0; j < start.Length; j++)
        {
            double size = Math.Max(Math.Max(Math.Abs(fit.Best.Parameters[j]), Math.Abs(start[j])), options.StartWidths?[j] ?? 0);
            if (sigma * curvature.Spread(j) > DoubtfulSpread * size)
            {
                return true;
            }
        }

        return false;
    }

    private static FitOutcome Outcome(ResidualProblem problem, BudgetedProblem budgeted, FitAttempt fit)
    {
        FitPoint best = fit.Best;
        if (fit.Curvature is not { } curvature || !fit.IsDetermined || !fit.IsMinimum)
        {
            string reason = Reason(fit, budgeted);
            return new FitOutcome.NotConverged(best.Parameters, best.SumOfSquares, reason, budgeted.Evaluations);
        }

        double data = SumOfSquares(best.Residuals.AsSpan(0, problem.DataCount));
        double priors = SumOfSquares(best.Residuals.AsSpan(problem.DataCount));
        int freedom = problem.DataCount - problem.ParameterCount;

        // Prior rows are in units of their standard deviation, and so must the data beside them be.
        double? sigma = problem.PriorCount > 0 ? 1 : freedom > 0 ? Math.Sqrt(data / freedom) : null;
        var covariance = new ParameterCovariance(curvature.InverseRoot(), sigma);
        return new FitOutcome.Converged(best.Parameters, covariance, data, priors, freedom, budgeted.Evaluations);
    }

    private static string Reason(FitAttempt fit, BudgetedProblem budgeted)
    {
        if (fit.IsAtEdge)
        {
            return "The best values found are at an edge beyond which the curve has no finite value: check the readings, or use "
                + "another curve.";
        }

        if (!fit.IsDetermined)
        {
            return "The readings do not determine every parameter of the curve: take readings at other doses, or use a curve with "
                + "fewer parameters.";
        }

        return budgeted.IsSpent
            ? FormattableString.Invariant($"The search did not settle within {budgeted.Evaluations} evaluations: start closer to the ")
                + "readings, or take readings where the curve bends."
            : "The search came to a halt before it reached a minimum: start closer to the readings, or use a curve without jumps and "
                + "kinks.";
    }

    private static double SumOfSquares(ReadOnlySpan<double> residuals)
    {
        double sum = 0;
        foreach (double residual in residuals)
        {
            sum += residual * residual;
        }

        return sum;
    }
}
