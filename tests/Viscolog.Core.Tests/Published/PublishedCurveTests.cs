using Viscolog.Core.Fitting;
using Viscolog.Core.Tests.Support;
using Xunit;
using static Viscolog.Core.Tests.Support.Dual;

namespace Viscolog.Core.Tests.Published;

/// <summary>
/// Published nonlinear fits from the trade's neighbourhood; the sources stand at the head of each data file. R's nls stops at a relative
/// offset of 1e-5, so its own figures hold to 5 or 6 digits of the smaller parameters.
/// </summary>
public sealed class PublishedCurveTests
{
    /// <summary>
    /// Stormer viscometer calibration: E. J. Williams, Regression Analysis, Wiley 1959; fit in Venables and Ripley, Modern Applied
    /// Statistics with S, 4th ed., chapter 8, figures recomputed with R 4.2.2 nls.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Stormer_calibration(bool exact)
    {
        IReadOnlyList<double[]> rows = Table.Read("E3_stormer_calibration.csv");
        var problem = new CurveProblem(2, rows, [.. rows.Select(row => row[2])], (b, x) => b[0] * x[0] / (x[1] - b[1]), exact);
        FitOutcome.Converged fit = Converged(problem, [28.875540997, 2.843727824]);
        AssertDigits(6.5, [29.40125682, 2.21827411], fit.Parameters);
        AssertDigits(5, [0.91553355, 0.66552162], fit.StandardErrors!);
        AssertDigits(6.5, [6.268027, 825.051444174], [fit.ResidualStandardDeviation!.Value, fit.ResidualSumOfSquares]);
        Assert.Equal(21, fit.DegreesOfFreedom);
    }

    /// <summary>
    /// Ryegrass root length: Inderjit, Streibig and Olofsdotter, Physiologia Plantarum 114 (2002) 422–428; recomputed with R 4.2.2 nls;
    /// agrees with Ritz and Streibig, J. Stat. Softw. 12(5) 2005 (from memory).
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Ryegrass_four_parameter_logistic(bool exact)
    {
        IReadOnlyList<double[]> rows = Table.Read("E4_ryegrass_4PL.csv");
        List<double[]> doses = [.. rows.Select(row => row[1..])];
        var problem = new CurveProblem(4, doses, [.. rows.Select(row => row[0])], Falling, exact);
        FitOutcome.Converged fit = Converged(problem, [2, 0.3, 8, 2]);
        AssertDigits(5.5, [2.98222993, 0.48141043, 7.79296230, 3.05795469], fit.Parameters);
        AssertDigits(5, [0.45842903, 0.20950599, 0.18973325, 0.18582883], fit.StandardErrors!);
        AssertDigits(6, [0.5196256], [fit.ResidualStandardDeviation!.Value]);
        Assert.Equal(20, fit.DegreesOfFreedom);

        // At dose 0 the logistic is its upper level, whatever steepness and midpoint are.
        static Dual Falling(Dual[] b, double[] x) =>
            x[0] == 0 ? b[2] + (0 * b[0]) : b[1] + ((b[2] - b[1]) / (1 + Exp(b[0] * (Math.Log(x[0]) - Log(b[3])))));
    }

    /// <summary>
    /// DNase assay, run 1: Davidian and Giltinan, Nonlinear Models for Repeated Measurement Data, 1995; figures computed with R 4.2.2 nls
    /// and SSfpl.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Dnase_four_parameter_logistic(bool exact)
    {
        IReadOnlyList<double[]> rows = Table.Read("E5_DNase_run1_4PL.csv");
        var problem = new CurveProblem(
            4,
            rows,
            [.. rows.Select(row => row[1])],
            (b, x) => b[0] + ((b[1] - b[0]) / (1 + Exp((b[2] - Math.Log(x[0])) / b[3]))),
            exact);
        FitOutcome.Converged fit = Converged(problem, [0.01, 2, 1, 1]);
        AssertDigits(5.5, [-0.0078971937, 2.3772390206, 1.5074030632, 1.0625787181], fit.Parameters);
        AssertDigits(5, [0.0171997, 0.1095163, 0.1020799, 0.0569961], fit.StandardErrors!);
        AssertDigits(6, [0.01980584], [fit.ResidualStandardDeviation!.Value]);
        Assert.Equal(12, fit.DegreesOfFreedom);
    }

    private static FitOutcome.Converged Converged(ResidualProblem problem, double[] start) =>
        Assert.IsType<FitOutcome.Converged>(LeastSquares.Fit(problem, start));

    private static void AssertDigits(double least, double[] published, IReadOnlyList<double> values) =>
        Assert.True(
            Digits.Least(values, published) >= least,
            FormattableString.Invariant($"{string.Join(' ', values)} against {string.Join(' ', published)}"));
}
