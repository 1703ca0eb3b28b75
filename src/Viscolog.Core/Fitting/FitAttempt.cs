using MathNet.Numerics.Random;

namespace Viscolog.Core.Fitting;

/// <summary>The fit from one start: passes of the minimiser, each scaled anew from the best point, until nothing improves.</summary>
internal sealed class FitAttempt
{
    // Verified to seven digits of a standard error: far below what any reading can tell.
    private const double OffsetTolerance = 1e-7;

    private const double RankLimit = 1e12;
    private const int IterationsOfPass = 100;
    private static readonly double[] Shares = [0.01, -0.01];

    private readonly BudgetedProblem _problem;
    private readonly double[] _lengths;
    private readonly bool _isPlain;
    private double[,]? _jacobian;

    private FitAttempt(BudgetedProblem problem, FitPoint start, bool isPlain)
    {
        _isPlain = isPlain;
        _problem = problem;
        Best = start;
        _lengths = new double[problem.ParameterCount];
    }

    /// <summary>The best point seen.</summary>
    public FitPoint Best { get; private set; }

    /// <summary>The linearised problem there; null where it is singular or has no derivatives.</summary>
    public Curvature? Curvature { get; private set; }

    /// <summary>Whether the problem has no finite derivatives at the best point.</summary>
    public bool IsAtEdge => _jacobian is null;

    /// <summary>Whether the point is stationary and nothing near it is lower, or fits exactly.</summary>
    public bool IsMinimum { get; private set; }

    private bool IsStationary => Curvature is { } c && c.Offset <= OffsetTolerance + c.RoundingOffset;

    /// <summary>
    /// Whether the rows determine every parameter at the best point: the scaled Jacobian has full rank, and rounding of the residuals alone
    /// moves no parameter by a tenth of its size.
    /// </summary>
    public bool IsDetermined => Curvature is { Condition: <= RankLimit } c && !Enumerable.Range(0, _lengths.Length).Any(
        j => c.Rounding * c.Spread(j) > 0.1 * Math.Max(Math.Abs(Best.Parameters[j]), _problem.Sizes[j]));

    /// <summary>Fits from a start; null where the problem has no finite value there.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="start">The start.</param>
    /// <param name="isPlain">Whether to damp in the parameters' own units, not in those of the Jacobian's columns.</param>
    public static FitAttempt? From(BudgetedProblem problem, double[] start, bool isPlain = false)
    {
        if (problem.IsSpent || problem.Evaluate(start) is not { } point)
        {
            return null;
        }

        var attempt = new FitAttempt(problem, point, isPlain);
        attempt.Search();
        return attempt;
    }

    private void Search()
    {
        Best = Linearise(Best);
        int idle = 0;
        while ((idle < 2 || IsStationary) && !_problem.IsSpent && !IsAtEdge)
        {
            if (IsStationary)
            {
                if (!TryLeave())
                {
                    IsMinimum = true;
                    return;
                }

                Best = Linearise(Best);
                idle = 0;
            }

            // A pass that brings nothing is followed by one in straightened coordinates; two in a row end the search.
            double before = Best.SumOfSquares;
            double[,] transform = idle > 0 && Curvature is { } here ? Straight(here) : _isPlain ? Identity() : Diagonal();
            Best = Linearise(ScaledPass.Run(_problem, Best, transform, IterationsOfPass));
            Polish();
            idle = Best.SumOfSquares < before * (1 - 1e-9) ? 0 : idle + 1;
        }
    }

    private FitPoint Linearise(FitPoint point)
    {
        _jacobian = _problem.Jacobian(point);
        Curvature = _jacobian is null ? null : Curvature.At(point, _jacobian);
        return point;
    }

    /// <summary>
    /// Undamped Gauss–Newton steps while each lowers the offset by a fifth or more: the sum of squares is flat to rounding before the
    /// parameters are.
    /// </summary>
    private void Polish()
    {
        for (int n = 0; n < 20 && !_problem.IsSpent && Curvature is { Offset: > 1e-11 and < 1e-2 } here; n++)
        {
            if (_problem.Evaluate(Moved(here.Step, 1)) is not { } point || point.SumOfSquares > Best.SumOfSquares * (1 + 1e-12) ||
                _problem.Jacobian(point) is not { } slope || Curvature.At(point, slope) is not { } there
                    || there.Offset > 0.8 * here.Offset)
            {
                return;
            }

            Best = point;
            _jacobian = slope;
            Curvature = there;
        }
    }

    /// <summary>
    /// Leaves a stationary point that is no minimum but a ridge or a saddle: a hundredth of the residuals' length along each straightened
    /// coordinate, either way, must not lower the sum of squares. The gradient that the tolerance leaves can't lower it that far.
    /// </summary>
    private bool TryLeave()
    {
        if (Curvature is not { RoundingOffset: < 1e-3 } here)
        {
            return false;
        }

        double[,] transform = Straight(here);
        FitPoint lowest = Best;
        var direction = new double[_lengths.Length];
        for (int m = 0; m < _lengths.Length; m++)
        {
            for (int j = 0; j < _lengths.Length; j++)
            {
                direction[j] = transform[j, m];
            }

            foreach (double share in Shares)
            {
                if (_problem.Evaluate(Moved(direction, share)) is { } point && point.SumOfSquares < lowest.SumOfSquares * (1 - 1e-7))
                {
                    lowest = point;
                }
            }
        }

        bool isLower = !ReferenceEquals(lowest, Best);
        Best = lowest;
        return isLower;
    }

    private double[] Moved(double[] step, double share)
    {
        var moved = (double[])Best.Parameters.Clone();
        for (int j = 0; j < moved.Length; j++)
        {
            moved[j] += share * step[j];
        }

        return moved;
    }

    /// <summary>Coordinates in which the Jacobian's columns are orthonormal: they straighten a long valley.</summary>
    private double[,] Straight(Curvature here)
    {
        double[,] transform = here.InverseRoot();
        double norm = Math.Sqrt(Best.SumOfSquares);
        for (int j = 0; j < _lengths.Length; j++)
        {
            for (int m = j; m < _lengths.Length; m++)
            {
                transform[j, m] *= norm;
            }
        }

        return transform;
    }

    private double[,] Identity()
    {
        var transform = new double[_lengths.Length, _lengths.Length];
        for (int j = 0; j < _lengths.Length; j++)
        {
            transform[j, j] = 1;
        }

        return transform;
    }

    /// <summary>Unit vectors divided by the longest column seen so far, so that a column that fades does not blow its steps up.</summary>
    private double[,] Diagonal()
    {
        double[] now = Curvature.ColumnLengths(_jacobian!);
        var transform = new double[_lengths.Length, _lengths.Length];
        for (int j = 0; j < _lengths.Length; j++)
        {
            _lengths[j] = Math.Max(_lengths[j], now[j]);
            transform[j, j] = _lengths[j] > 0
                ? Math.Sqrt(Best.SumOfSquares) / _lengths[j]
                : Math.Max(1, Math.Abs(Best.Parameters[j]));
        }

        return transform;
    }
}

/// <summary>Starts moved from the given one by a seeded draw, near and far in turn.</summary>
internal sealed class MovedStarts(double[] start, FitOptions options)
{
    private readonly Xoshiro256StarStar _random = new(options.Seed);
    private int _drawn;

    /// <summary>The next start: within one decade or width of the given one, then within two, and so on in turn.</summary>
    public double[] Next()
    {
        int reach = 1 + (_drawn++ % 2);
        var moved = new double[start.Length];
        for (int j = 0; j < start.Length; j++)
        {
            double draw = reach * ((2 * _random.NextDouble()) - 1);
            moved[j] = options.StartWidths is { } widths ? start[j] + (draw * widths[j])
                : start[j] == 0 ? draw
                : start[j] * Math.Pow(10, draw);
        }

        return moved;
    }
}
