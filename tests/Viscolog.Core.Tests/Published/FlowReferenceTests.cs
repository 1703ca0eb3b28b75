using System.Collections.Immutable;
using Viscolog.Core.Flow;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>
/// Laws of flow against SciPy 1.10.1's curve_fit (MINPACK): figures made by tests/peers/flow_reference.py from laws with scatter. And
/// published tables.
/// </summary>
public sealed class FlowReferenceTests
{
    private static readonly double[] Rates = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500];

    private static readonly Dictionary<string, double[]> Stresses = new(StringComparer.Ordinal)
    {
        ["herschel-bulkley"] = [11.12, 11.67, 13.1, 15.12, 17.63, 21.86, 26.82, 34.65, 48.38, 63.21, 85.83, 127.1],
        ["casson"] = [4.841, 5.082, 5.761, 6.77, 8.167, 10.98, 14.82, 21.82, 38.35, 62.16, 108.1, 231.2],
        ["cross"] = [3.378, 5.843, 11.09, 16.84, 23.2, 31.22, 37.79, 46.37, 59.62, 74.87, 102.6, 170.9],
        ["carreau"] = [4.017, 7.694, 16.87, 26.76, 36.5, 48.97, 61.02, 78.43, 107.2, 138.2, 188.0, 292.5],
    };

    /// <summary>
    /// Data, weights, law, sum of squares, then value and standard error of each parameter in SciPy's order (its names are the
    /// program's).
    /// </summary>
    public static TheoryData<string, FlowWeights, string, double, double[]> Fits => new()
    {
        { "herschel-bulkley", FlowWeights.Relative, "newton", 7.7579022, [0.41176321, 0.16789] },
        { "herschel-bulkley", FlowWeights.Relative, "power-law", 0.24414796, [15.86368, 0.94063, 0.29178725, 0.019687] },
        { "herschel-bulkley", FlowWeights.Relative, "bingham", 0.88530327, [14.431939, 1.638, 0.31859937, 0.060417] },
        { "herschel-bulkley", FlowWeights.Relative, "herschel-bulkley", 0.0011364405,
            [9.0001517, 0.13517, 6.0049873, 0.14044, 0.47977503, 0.004583] },
        { "herschel-bulkley", FlowWeights.Relative, "casson", 0.23222336, [11.962784, 0.82199, 0.16648066, 0.021939] },
        { "herschel-bulkley", FlowWeights.None, "newton", 6146.2653, [0.29893669, 0.04294] },
        { "herschel-bulkley", FlowWeights.None, "power-law", 146.36444, [11.728003, 1.0251, 0.37865055, 0.016268] },
        { "herschel-bulkley", FlowWeights.None, "bingham", 1415.7191, [22.441447, 3.8823, 0.23311503, 0.02443] },
        { "herschel-bulkley", FlowWeights.None, "herschel-bulkley", 1.015398,
            [8.9372161, 0.21708, 6.0658528, 0.12818, 0.47800207, 0.003363] },
        { "herschel-bulkley", FlowWeights.None, "casson", 374.7214, [16.452943, 1.8746, 0.11372522, 0.011321] },
        { "casson", FlowWeights.Relative, "casson", 0.0011235425, [4.0018985, 0.024168, 0.34987182, 0.0024381] },
        { "casson", FlowWeights.Relative, "herschel-bulkley", 0.018716799, [4.7559221, 0.15369, 1.6981669, 0.12793, 0.77581504, 0.016138] },
        { "casson", FlowWeights.None, "casson", 0.99995686, [4.05234, 0.062653, 0.34844095, 0.0010946] },
        { "casson", FlowWeights.None, "bingham", 264.50976, [9.5566893, 1.6781, 0.45383745, 0.01056] },
        { "cross", FlowWeights.Relative, "cross", 0.0011299984,
            [40.049471, 0.60404, 1.5053596, 0.058011, 0.84908834, 0.0065708, 0.19893124, 0.0064813] },
        { "cross", FlowWeights.None, "cross", 1.5092396,
            [40.754665, 2.2663, 1.5556154, 0.14795, 0.84627033, 0.0069439, 0.19745031, 0.0031995] },
        { "carreau", FlowWeights.Relative, "carreau", 0.0011021003,
            [39.91196, 0.32726, 1.4856848, 0.038673, 0.29875666, 0.0054707, 0.20113725, 0.013746] },
        { "carreau", FlowWeights.None, "carreau", 4.447769,
            [40.157992, 1.9983, 1.5175326, 0.12803, 0.30189507, 0.0048275, 0.19541256, 0.006808] },
    };

    [Theory]
    [MemberData(nameof(Fits))]
    public void Fits_and_standard_errors_are_those_of_SciPy(string data, FlowWeights weights, string law, double sumOfSquares,
        double[] figures)
    {
        var fit = FlowFits.Of(Points(Rates, Stresses[data]), weights).Single(f => f.Model.Name == law);
        Assert.Null(fit.Trouble);
        Assert.Equal(1, fit.ResidualSumOfSquares!.Value / sumOfSquares, 1e-6);
        Assert.Equal(figures.Length / 2, fit.Parameters.Length);
        for (var j = 0; j < fit.Parameters.Length; j++)
        {
            Assert.Equal(1, fit.Parameters[j].Value / figures[2 * j], 2e-6);
            Assert.Equal(1, fit.Parameters[j].StandardError!.Value / figures[(2 * j) + 1], 2e-4);
        }
    }

    [Theory]
    [InlineData("herschel-bulkley")]
    [InlineData("casson")]
    [InlineData("cross")]
    [InlineData("carreau")]
    public void The_law_that_made_the_data_weighs_most(string data)
        => Assert.Equal(data, FlowCurve.Of(Points(Rates, Stresses[data]), FlowWeights.Relative).Fits[0].Model.Name);

    /// <summary>Soy dough, a textbook exercise (seen at askfilo.com): log-log least squares gives n = 0.27791 and 24433 Pa·sⁿ.</summary>
    [Fact]
    public void Soy_dough_thins_with_an_index_of_0278()
    {
        var points = Points([250, 500, 750, 1000, 1250, 1500], [110000, 140000, 160000, 170000, 175000, 180000]);
        var (ln, n) = new FlowOutline(points).PowerLaw(0);
        Assert.Equal(0.27791, n, 1e-5);
        Assert.Equal(24433.0, Math.Exp(ln), 1.0);
        var fit = FlowFits.Of(points, FlowWeights.Relative).Single(f => f.Model.Name == "power-law");
        Assert.Equal(0.278, fit.Parameters[1].Value, 0.002);
        Assert.Equal(24433, fit.Parameters[0].Value, 24433 * 0.02);
    }

    /// <summary>
    /// Low-fat mayonnaise, a textbook exercise (seen at solutioninn.com): the power law's n is −0.104, which no steady flow has.
    /// </summary>
    [Fact]
    public void Mayonnaise_whose_stress_falls_is_warned_of()
    {
        var rows = Table.Read("C6_mayonnaise_powerlaw.csv");
        var points = Points([.. rows.Select(r => r[1])], [.. rows.Select(r => r[0] * r[1])]);
        var curve = FlowCurve.Of(points, FlowWeights.Relative);
        Assert.Contains(curve.Warnings, w => w is FlowWarning.StressFalls);
        Assert.Equal(-0.10427, new FlowOutline(points).PowerLaw(0).Index, 2e-4);
        Assert.Equal(-0.104, curve.Fits.Single(f => f.Model.Name == "power-law").Parameters[1].Value, 0.01);
    }

    private static ImmutableArray<FlowPoint> Points(double[] rates, double[] stresses)
        => [.. rates.Select((r, i) => new FlowPoint(ShearRate.FromPerSecond(r), Stress.FromPascals(stresses[i])))];
}
