using System.Collections.Immutable;
using CsCheck;
using Viscolog.Core.Charting;
using Xunit;

namespace Viscolog.Core.Tests.Charting;

/// <summary>Signals, scales and refusals of a control chart.</summary>
public sealed class ControlChartRuleTests
{
    /// <summary>A quiet baseline: mean 0, mean moving range 1.128, so that one standard deviation is 1.</summary>
    private static readonly double[] Quiet = [.. Enumerable.Range(0, 20).Select(i => i % 2 == 0 ? 0.564 : -0.564)];

    [Theory]
    [InlineData(ChartRule.BeyondLimits, 3.1)]
    [InlineData(ChartRule.TwoOfThree, 2.1, 0.2, 2.1)]
    [InlineData(ChartRule.TwoOfThree, -2.1, -2.1)]
    [InlineData(ChartRule.FourOfFive, 1.1, 1.1, -0.2, 1.1, 1.1)]
    [InlineData(ChartRule.EightOnOneSide, 0.1, 0.2, 0.1, 0.3, 0.1, 0.2, 0.1, 0.2)]
    public void A_pattern_gives_its_signal_at_the_point_that_completes_it(ChartRule rule, params double[] more)
    {
        var signal = Assert.Single(Chart([.. Quiet, .. more]).Signals);
        Assert.Equal((rule, 20 + more.Length - 1, more[^1] > 0), (signal.Rule, signal.Place, signal.IsHigh));
    }

    [Theory]
    [InlineData(2.9)]
    [InlineData(2.1, -2.1)]
    [InlineData(2.1, 0.1, 0.1, 2.1)]
    [InlineData(1.1, 1.1, -0.2, -0.2, 1.1, 1.1)]
    [InlineData(0.1, 0.2, 0.1, 0.3, 0.1, 0.2, 0.1)]
    [InlineData(2.1, 2.1, 0.5)]
    public void What_is_short_of_a_pattern_gives_none_at_its_end(params double[] more)
        => Assert.DoesNotContain(Chart([.. Quiet, .. more]).Signals, s => s.Place == 20 + more.Length - 1);

    [Fact]
    public void The_log_scale_gives_the_chart_of_the_logarithms()
    {
        var linear = Chart([.. Quiet, 3.2]);
        var log = Chart([.. Quiet.Select(Math.Exp), Math.Exp(3.2)], ChartScale.Log);
        Assert.Equal(Math.Exp(linear.Upper), log.Upper, 1e-9);
        Assert.Equal(Math.Exp(linear.Mean), log.Mean, 1e-9);
        Assert.Equal(linear.MovingRangeMean, log.MovingRangeMean, 1e-12);
        Assert.Equal(linear.Signals.Select(s => (s.Place, s.Rule)), log.Signals.Select(s => (s.Place, s.Rule)));
    }

    [Fact]
    public void Scaling_all_values_scales_the_limits_and_moves_no_signal()
        => Gen.Double[0.5, 2].Array[12, 30].Where(a => a.Distinct().Count() > 3).Select(Gen.Double[0.01, 100]).Sample((values, factor) =>
        {
            var (one, other) = (Chart(values), Chart([.. values.Select(v => v * factor)]));
            Assert.Equal(1, other.Upper / (one.Upper * factor), 1e-9);
            Assert.Equal(one.Signals.Select(s => (s.Place, s.Rule)), other.Signals.Select(s => (s.Place, s.Rule)));
        }, seed: "0N0XIzNsQ0O2", iter: 200);

    [Fact]
    public void Capability_is_the_nearer_limit_and_absent_without_one()
    {
        Assert.Null(Chart(Quiet).Cpk);
        var request = new ChartRequest(Points(Quiet), ChartScale.Linear) { Low = -4, High = 6 };
        var chart = Assert.IsType<ChartOutcome.Charted>(ControlChart.Of(request)).Chart;
        Assert.Equal(4 / 3.0, chart.Cpk!.Index, 1e-9);
        Assert.True(chart.Cpk.Low < chart.Cpk.Index && chart.Cpk.Index < chart.Cpk.High);
        Assert.True(chart.Ppk!.Index > chart.Cpk.Index);
    }

    [Fact]
    public void What_can_not_be_charted_is_refused_with_what_to_do()
    {
        Assert.Equal(new ChartRefusal.TooFewBatches(2), Refused(new([.. Points([1, 2])], ChartScale.Linear)));
        Assert.Equal(new ChartRefusal.NoLogarithm(new("2", 0)), Refused(new([.. Points([1, 0, 2, 3])], ChartScale.Log)));
        Assert.Equal(new ChartRefusal.WantedNoLogarithm(), Refused(new([.. Points([1, 2, 3, 2])], ChartScale.Log) { Low = 0 }));
        Assert.Equal(new ChartRefusal.NoScatter(), Refused(new([.. Points([2, 2, 2, 2])], ChartScale.Linear)));
        Assert.Equal(new ChartRefusal.NoSuchBatch("x"), Refused(new([.. Points([1, 2, 3, 2])], ChartScale.Linear) { LeftOut = ["x"] }));
        Assert.Equal(new ChartRefusal.WantedTurned(), Refused(new([.. Points([1, 2, 3, 2])], ChartScale.Linear) { Low = 3, High = 2 }));
    }

    private static ChartRefusal Refused(ChartRequest request) => Assert.IsType<ChartOutcome.Refused>(ControlChart.Of(request)).Reason;

    private static ImmutableArray<ChartPoint> Points(double[] values)
        => [.. values.Select((v, i) => new ChartPoint(FormattableString.Invariant($"{i + 1}"), v))];

    private static ControlChart Chart(double[] values, ChartScale scale = ChartScale.Linear)
        => Assert.IsType<ChartOutcome.Charted>(ControlChart.Of(new(Points(values), scale))).Chart;
}
