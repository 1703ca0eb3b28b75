using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using Viscolog.Core.Charting;
using Viscolog.Core.Checking;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>Control charts, capability and conformity against figures from outside the project.</summary>
public sealed class ControlChartTests
{
    /// <summary>
    /// Montgomery, Introduction to Statistical Quality Control, 5th edition, pp. 232-235: 20 trial batches of primer paint; limits 32.565
    /// and 35.611 (d2 = 1.128), batch 4 out.
    /// </summary>
    [Fact]
    public void Viscosity_of_primer_paint()
    {
        var chart = Charted(Points("G1_primer_paint_viscosity.csv"));
        Assert.Equal(34.0880, chart.Mean, 5e-5);
        Assert.Equal(0.572632, chart.MovingRangeMean, 5e-7);
        Assert.Equal(35.6110, chart.Upper, 5e-4);
        Assert.Equal(32.5650, chart.Lower, 5e-4);
        Assert.Equal(1.8708, chart.MovingRangeUpper, 5e-5);
        Assert.Equal([("4", ChartRule.BeyondLimits)], chart.Signals.Select(s => (s.Batch, s.Rule)));
        Assert.Equal([3], chart.RangeSignals);
    }

    /// <summary>The same with batch 4 left out of the limits: 33.9895, 0.46444, 32.754, 35.225.</summary>
    [Fact]
    public void Viscosity_of_primer_paint_without_the_batch_whose_cause_was_found()
    {
        var chart = Charted(Points("G1_primer_paint_viscosity.csv"), leftOut: "4");
        Assert.Equal(33.9895, chart.Mean, 5e-5);
        Assert.Equal(0.46444, chart.MovingRangeMean, 5e-6);
        Assert.Equal(32.7542, chart.Lower, 5e-4);
        Assert.Equal(35.2247, chart.Upper, 5e-4);
        Assert.Equal(20, chart.Points.Length);
        Assert.Contains(chart.Signals, s => s.Batch == "4");
    }

    /// <summary>NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (values from memory): 50.81, 1.8778, 55.8041, 45.8159.</summary>
    [Fact]
    public void Flow_rate_of_ten_batches()
    {
        var chart = Charted(Points("G2_flow_rate_individuals.csv"));
        Assert.Equal(50.81, chart.Mean, 1e-9);
        Assert.Equal(1.8778, chart.MovingRangeMean, 5e-5);
        Assert.Equal(55.8041, chart.Upper, 5e-5);
        Assert.Equal(45.8159, chart.Lower, 5e-5);
        Assert.DoesNotContain(chart.Signals, s => s.Rule == ChartRule.BeyondLimits);
    }

    /// <summary>
    /// d2, d3 and all that follows from them, integrated here from the range of normal samples, against the published table.
    /// </summary>
    [Fact]
    public void Factors_from_first_principles()
    {
        foreach (var row in Table.Read("G3_shewhart_constants.csv"))
        {
            var n = (int)row[0];
            var (d2, d3) = (RangeMoment(n, r => 1), 0.0);
            d3 = Math.Sqrt(RangeMoment(n, r => 2 * r) - (d2 * d2));
            var c4 = Math.Sqrt(2.0 / (n - 1)) * Math.Exp(SpecialFunctions.GammaLn(n / 2.0) - SpecialFunctions.GammaLn((n - 1) / 2.0));
            double[] expected =
            [
                n, d2, d3, 3 / (d2 * Math.Sqrt(n)), Math.Max(0, 1 - (3 * d3 / d2)), 1 + (3 * d3 / d2), c4, 3 / (c4 * Math.Sqrt(n)),
                Math.Max(0, 1 - (3 * Math.Sqrt(1 - (c4 * c4)) / c4)), 1 + (3 * Math.Sqrt(1 - (c4 * c4)) / c4),
            ];
            Assert.All(expected.Zip(row), pair => Assert.Equal(pair.Second, pair.First, 2e-5));
        }

        var two = Table.Read("G3_shewhart_constants.csv")[0];
        Assert.Equal(ShewhartConstants.D2, two[1], 5e-4);
        Assert.Equal(ShewhartConstants.D4, two[5], 5e-4);
        Assert.Equal(2 / Math.Sqrt(Math.PI), two[1], 5e-6);
    }

    /// <summary>
    /// JCGM 106:2012, the numbers of its example at clause 7.4 (seen in a paper of 2022; the chance computed apart): 0.66263.
    /// </summary>
    [Fact]
    public void Probability_of_conformity()
        => Assert.Equal(0.66263, Conformity.Chance(13.6, 1.8, 12.5, 16.3, double.PositiveInfinity), 5e-6);

    /// <summary>
    /// JCGM 106:2012, clause 8.3.2: a guard band of r·2u; with one limit far away, 95 % is r = 1.645/2 (quantile of the normal law).
    /// </summary>
    [Fact]
    public void Guard_band_of_a_single_limit()
        => Assert.Equal(Normal.InvCDF(0, 1, 0.95) * 1.8, Conformity.Acceptance(1.8, 0, 1000, double.PositiveInfinity)!.Value.Low, 1e-6);

    /// <summary>
    /// Bissell's interval as Montgomery (chapter on process capability; from memory) works it: 20 values, index 1.33 gives 0.88 to 1.78;
    /// and an exercise there: limits 90 and 100, 30 values, mean 97, s = 1.6, index 0.625, the interval worked out here by hand.
    /// </summary>
    [Fact]
    public void Interval_of_a_capability_index()
    {
        var first = Capability.Of(0, 1, 20, 19, -1.33 * 3, null)!;
        Assert.Equal(1.33, first.Index, 1e-9);
        Assert.Equal((0.88, 1.78), (Math.Round(first.Low, 2), Math.Round(first.High, 2)));
        var second = Capability.Of(97, 1.6, 30, 29, 90, 100)!;
        Assert.Equal(0.625, second.Index, 1e-9);
        Assert.Equal(0.625 * (1 - (1.959964 * Math.Sqrt((1 / (9 * 30 * 0.390625)) + (1 / 58.0)))), second.Low, 1e-6);
    }

    /// <summary>The variance of a mean moving range, exact, against simulation of 200 000 charts of 10 values.</summary>
    [Fact]
    public void Variance_of_the_mean_moving_range()
    {
        var random = new Random(5);
        var means = Enumerable.Range(0, 200_000).Select(_ =>
        {
            double[] values = [.. Enumerable.Range(0, 10).Select(_ => Normal.Sample(random, 0, 1))];
            return values.Zip(values.Skip(1), (a, b) => Math.Abs(a - b)).Average();
        }).ToArray();
        var mean = means.Average();
        Assert.Equal(means.Average(m => (m - mean) * (m - mean)) / (mean * mean), ShewhartConstants.RelativeVariance(10), 0.002);
    }

    private static ControlChart Charted(ChartPoint[] points, params string[] leftOut)
        => Assert.IsType<ChartOutcome.Charted>(ControlChart.Of(new([.. points], ChartScale.Linear) { LeftOut = [.. leftOut] })).Chart;

    private static ChartPoint[] Points(string file)
        => [.. Table.Read(file).Select(r => new ChartPoint(FormattableString.Invariant($"{r[0]}"), r[1]))];

    /// <summary>∫ f(r)·P(R &gt; r) dr, with P(R ≤ r) = n∫φ(x)(Φ(x + r) − Φ(x))ⁿ⁻¹ dx (Tippett, Biometrika 17 (1925) 364).</summary>
    private static double RangeMoment(int n, Func<double, double> f)
        => Integrate.GaussLegendre(
            r
                => f(r) * (
                    1 - (
                        n * Integrate.GaussLegendre(
                            x => Normal.PDF(0, 1, x) * Math.Pow(Normal.CDF(0, 1, x + r) - Normal.CDF(0, 1, x), n - 1),
                            -9,
                            9,
                            128))),
            0,
            12,
            64);
}
