using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using Viscolog.Core.Fitting;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Laws;

/// <summary>What any fit must obey, whatever the readings.</summary>
public sealed class LeastSquaresLaws
{
    private static readonly double[] Doses = [0.2, 0.5, 0.8, 1.1, 1.4, 1.8, 2.2, 2.6, 3.0, 3.5, 4.0, 4.5];

    private static readonly double[] Start = [6.5, 9, 2, 0.4];

    private static readonly Gen<double[]> Noise = Gen.Double[-0.05, 0.05].Array[12];

    [Fact]
    public void Scaling_the_residuals_leaves_the_parameters_and_their_errors_alone() =>
        Gen.Select(Noise, Gen.Double[-8, 8]).Sample((noise, decades) =>
        {
            FitOutcome.Converged one = Converged(Sigmoid(noise));
            FitOutcome.Converged other = Converged(Sigmoid(noise, Math.Pow(10, decades)));
            AssertClose(one.Parameters, other.Parameters, 1e-6);
            AssertClose(one.StandardErrors!, other.StandardErrors!, 1e-5);
        }, iter: 60);

    [Fact]
    public void Another_unit_of_dose_gives_the_same_fit() =>
        Noise.Sample(noise =>
        {
            // Steepness in exponents of dose itself: 1000 times the dose, a thousandth of the slope.
            FitOutcome.Converged one = Converged(Saturating(noise, 1), [7, 2, 1]);
            FitOutcome.Converged other = Converged(Saturating(noise, 1000), [7, 2, 0.001]);
            AssertClose(one.Parameters, [other.Parameters[0], other.Parameters[1], other.Parameters[2] * 1000], 1e-6);
            AssertClose(one.StandardErrors!, [other.StandardErrors![0], other.StandardErrors![1], other.StandardErrors![2] * 1000], 1e-5);
        }, iter: 60);

    [Fact]
    public void A_linear_problem_is_solved_as_its_factorisation_solves_it() =>
        Gen.Select(Gen.Double[-1, 1].Array[30], Gen.Double[-5, 5].Array[10], Gen.Double[-3, 3].Array[3]).Sample((entries, y, start) =>
        {
            Matrix<double> a = Matrix<double>.Build.Dense(10, 3, entries);
            if (a.ConditionNumber() > 1e3)
            {
                return;
            }

            Vector<double> expected = a.QR(QRMethod.Thin).Solve(Vector<double>.Build.Dense(y));
            var problem = new FunctionProblem(3, 10, 0, (p, i) => (a[i, 0] * p[0]) + (a[i, 1] * p[1]) + (a[i, 2] * p[2]) - y[i]);
            AssertClose(expected, Converged(problem, start).Parameters, 1e-7);
        }, iter: 100);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e300)]
    [InlineData(1e100)]
    public void Wild_values_beyond_an_edge_neither_throw_nor_hang(double wild) =>
        Gen.Select(Noise, Gen.Double[0.1, 3]).Sample((noise, edge) =>
        {
            double[] y = Readings(noise);

            // Beyond the edge of one parameter the model has no value worth having; the edge may cut the minimum off.
            var problem = new FunctionProblem(4, 12, 0, (p, i) => p[3] > edge ? wild : Logistic(p, Doses[i]) - y[i]);
            FitOutcome outcome = LeastSquares.Fit(problem, [6.5, 9, 2, 0.05], new FitOptions { MaximumEvaluations = 2000 });
            Assert.InRange(problem.Calls, 1, 2000 * 60);
            if (outcome is FitOutcome.Converged fit)
            {
                Assert.True(fit.Parameters[3] <= edge);
            }
        }, iter: 20);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    public void Wild_values_everywhere_are_impossible(double wild) =>
        Assert.IsType<FitOutcome.Impossible>(LeastSquares.Fit(new FunctionProblem(2, 5, 0, (_, _) => wild), [1, 1]));

    [Fact]
    public void A_model_that_grows_without_bound_ends_within_its_budget()
    {
        // The double exponential leaves the range of numbers at once, also at the start; only p = (0, −e) fits, and exactly.
        var problem = new FunctionProblem(2, 6, 0, (p, i) => Math.Exp(Math.Exp(p[0] * (i + 1))) + p[1]);
        FitOutcome outcome = LeastSquares.Fit(problem, [1.5, 1], new FitOptions { MaximumEvaluations = 500 });
        Assert.InRange(problem.Calls, 1, 500 * 30);
        if (outcome is FitOutcome.Converged fit)
        {
            AssertClose([0, -Math.E], fit.Parameters, 1e-9);
        }
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void A_start_that_is_no_number_is_impossible(double bad) =>
        Assert.IsType<FitOutcome.Impossible>(LeastSquares.Fit(Sigmoid(new double[12]), [6.5, 9, bad, 0.4]));

    [Fact]
    public void Fewer_readings_than_parameters_are_impossible_and_the_reason_counts_them()
    {
        var problem = new FunctionProblem(4, 3, 0, (p, i) => p[i] + p[3]);
        FitOutcome.Impossible outcome = Assert.IsType<FitOutcome.Impossible>(LeastSquares.Fit(problem, [1, 1, 1, 1]));
        Assert.Contains("at least 1 more", outcome.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Prior_rows_make_two_readings_enough_for_four_parameters()
    {
        const double sigma = 0.05;
        double[] mean = [6.4, 8.8, 1.8, 0.6];
        double[] spread = [1, 0.8, 0.5, 0.8];
        double[] y = [6.6, 7.2];
        var problem = new FunctionProblem(
            4, 2, 4, (p, i) => i < 2 ? (Logistic(p, Doses[i]) - y[i]) / sigma : (p[i - 2] - mean[i - 2]) / spread[i - 2]);
        FitOutcome.Converged fit = Converged(problem, mean);
        Assert.Equal(-2, fit.DegreesOfFreedom);
        Assert.Null(fit.ResidualStandardDeviation);
        Assert.Equal(1, fit.Covariance.Sigma);
        for (int j = 0; j < 4; j++)
        {
            Assert.InRange(fit.StandardErrors![j], 0, spread[j]);
        }

        // No uncertainty remains below what the readings carry, and at a reading not more than they carry.
        double[] slope = Slope([.. fit.Parameters], Doses[0]);
        Assert.InRange(Math.Sqrt(fit.Covariance.VarianceOf(slope)), 0.1 * sigma, sigma);
    }

    [Fact]
    public void A_parameter_that_the_readings_do_not_see_is_not_converged()
    {
        var problem = new FunctionProblem(2, 6, 0, (p, i) => p[0] - i);
        FitOutcome.NotConverged outcome = Assert.IsType<FitOutcome.NotConverged>(LeastSquares.Fit(problem, [1, 1]));
        Assert.Contains("do not determine", outcome.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stationary_start_that_is_no_minimum_is_left()
    {
        // p² + (3 − p²)² has a maximum at 0, where the Jacobian has full rank, and minima at p² = 5/2.
        var problem = new FunctionProblem(1, 2, 0, (p, i) => i == 0 ? p[0] : 3 - (p[0] * p[0]));
        Assert.Equal(2.5, Math.Pow(Converged(problem, [0]).Parameters[0], 2), 1e-6);
    }

    [Fact]
    public void A_parameter_that_fades_from_sight_is_not_converged()
    {
        // The curve falls, the readings rise: the flatter the better, until no reading sees the logarithm of the rate any more.
        var problem = new FunctionProblem(2, 6, 0, (p, i) => p[0] + Math.Exp(-Math.Exp(p[1]) * (i + 1)) - 3 - (0.1 * i));
        Assert.IsNotType<FitOutcome.Converged>(LeastSquares.Fit(problem, [1, 1]));
    }

    [Fact]
    public void Two_parameters_that_only_their_sum_shows_are_not_converged()
    {
        var problem = new FunctionProblem(2, 6, 0, (p, i) => p[0] + p[1] - (i * i));
        Assert.IsType<FitOutcome.NotConverged>(LeastSquares.Fit(problem, [1, 1]));
    }

    [Fact]
    public void Exact_readings_are_fitted_exactly() =>
        Gen.Select(Gen.Double[5, 8], Gen.Double[1, 4], Gen.Double[0.8, 4], Gen.Double[-0.3, 1]).Sample((low, span, steep, mid) =>
        {
            double[] truth = [low, low + span, steep, mid];
            var problem = new FunctionProblem(4, 12, 0, (p, i) => Logistic(p, Doses[i]) - Logistic(truth, Doses[i]));
            AssertClose(truth, Converged(problem, Start).Parameters, 1e-6);
        }, iter: 100);

    [Fact]
    public void The_same_call_gives_the_same_answer_and_moved_starts_do_no_harm()
    {
        double[] noise = [.. Enumerable.Range(0, 12).Select(i => 0.04 * Math.Sin(7.0 * i))];
        var options = new FitOptions { ExtraStarts = 6, StartWidths = [1, 1, 0.5, 0.5], Seed = 5 };
        FitOutcome.Converged one = Assert.IsType<FitOutcome.Converged>(LeastSquares.Fit(Sigmoid(noise), Start, options));
        FitOutcome.Converged two = Assert.IsType<FitOutcome.Converged>(LeastSquares.Fit(Sigmoid(noise), Start, options));
        Assert.Equal(one.Parameters, two.Parameters);
        Assert.Equal(one.Evaluations, two.Evaluations);
        AssertClose(Converged(Sigmoid(noise)).Parameters, one.Parameters, 1e-6);
    }

    [Fact]
    public void A_fault_in_the_model_is_not_swallowed()
    {
        int calls = 0;
        var problem = new FunctionProblem(1, 2, 0, (p, i) => ++calls > 7 ? throw new InvalidOperationException("fault") : p[0] - i);
        Assert.Throws<InvalidOperationException>(() => LeastSquares.Fit(problem, [9]));
    }

    private static FunctionProblem Sigmoid(double[] noise, double scale = 1)
    {
        double[] y = Readings(noise);
        return new FunctionProblem(4, 12, 0, (p, i) => scale * (Logistic(p, Doses[i]) - y[i]));
    }

    private static FunctionProblem Saturating(double[] noise, double unit) =>
        new(
            3,
            12,
            0,
            (p, i) => p[0] + (p[1] * (1 - Math.Exp(-p[2] * unit * Doses[i]))) - (7 + (2.5 * (1 - Math.Exp(-0.6 * Doses[i]))) + noise[i]));

    private static double[] Readings(double[] noise) => [.. Doses.Select((dose, i) => Logistic([7, 9.5, 3, 0.7], dose) + noise[i])];

    private static double Logistic(double[] p, double dose) =>
        p[0] + ((p[1] - p[0]) / (1 + Math.Exp(-p[2] * (Math.Log(dose) - p[3]))));

    private static double[] Slope(double[] p, double dose)
    {
        var slope = new double[p.Length];
        for (int j = 0; j < slope.Length; j++)
        {
            double[] above = [.. p];
            double[] below = [.. p];
            above[j] += 1e-6;
            below[j] -= 1e-6;
            slope[j] = (Logistic(above, dose) - Logistic(below, dose)) / 2e-6;
        }

        return slope;
    }

    private static FitOutcome.Converged Converged(ResidualProblem problem, double[]? start = null) =>
        Assert.IsType<FitOutcome.Converged>(LeastSquares.Fit(problem, start ?? Start));

    private static void AssertClose(IEnumerable<double> expected, IEnumerable<double> actual, double relative)
    {
        foreach ((double one, double other) in expected.Zip(actual))
        {
            Assert.True(
                Math.Abs(one - other) <= relative * Math.Max(1, Math.Abs(one)), FormattableString.Invariant($"{one} against {other}"));
        }
    }
}
