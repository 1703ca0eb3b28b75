using System.Globalization;
using Viscolog.Core.Fitting;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>
/// All 27 nonlinear problems of the NIST/ITL Statistical Reference Datasets, from both starts. Digits are log relative errors against
/// the certified values, at most 11, which is as many as the certificates give.
/// </summary>
public sealed class NistNonlinearTests(ITestOutputHelper output)
{
    public static TheoryData<string, int> Rows()
    {
        var rows = new TheoryData<string, int>();
        foreach (string name in NistProblem.Names)
        {
            rows.Add(name, 1);
            rows.Add(name, 2);
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Certified_values_with_exact_derivatives(string name, int start) => Compare(name, start, true);

    [Theory]
    [MemberData(nameof(Rows))]
    public void Certified_values_with_differences(string name, int start) => Compare(name, start, false);

    private void Compare(string name, int start, bool exact)
    {
        NistProblem nist = NistProblem.Read(name);
        FitOutcome outcome = LeastSquares.Fit(nist.Problem(exact), nist.Start(start));
        if (outcome is FitOutcome.NotConverged not)
        {
            output.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{name} {start} NOT {not.Reason} {not.SumOfSquares} {nist.SumOfSquares} {string.Join(' ', not.Best)}"));
        }

        FitOutcome.Converged fit = Assert.IsType<FitOutcome.Converged>(outcome);
        double parameters = Digits.Least(fit.Parameters, nist.Certified);
        double errors = Digits.Least(fit.StandardErrors!, nist.Errors);
        double deviation = Digits.Of(fit.ResidualStandardDeviation!.Value, nist.StandardDeviation);
        double sum = Digits.Of(fit.ResidualSumOfSquares, nist.SumOfSquares);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-9} {start} parameters {parameters,4:F1} errors {errors,4:F1} deviation {deviation,4:F1} "
                + $"evaluations {fit.Evaluations}"));

        Assert.True(parameters >= 6, "parameters");

        // Lanczos1's data are exact: its residuals are the rounding of the data, and so are its standard errors.
        if (name != "Lanczos1")
        {
            Assert.True(errors >= 4, "standard errors");
            Assert.True(deviation >= 6, "residual standard deviation");
            Assert.True(sum >= 6, "residual sum of squares");
        }
    }
}
