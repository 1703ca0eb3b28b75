using MathNet.Numerics.Distributions;
using Viscolog.Core.Charting;
using Xunit;

namespace Viscolog.Core.Tests.Charting;

/// <summary>How often a chart of a process in control gives a signal.</summary>
public sealed class ChartFalseSignalTests
{
    /// <summary>
    /// With known limits the four rules together give one false signal in 91.75 points on average (Champ and Woodall, Technometrics 29
    /// (1987) 393–399, as articles on the Western Electric rules quote it); one point beyond the limits alone in 370.4 (normal law).
    /// </summary>
    [Fact]
    public void The_run_length_in_control_is_the_published_one()
    {
        var random = new Random(1987);
        const int runs = 20_000;
        double Length()
        {
            for (var points = 500; ; points *= 4)
            {
                double[] away = [.. Enumerable.Range(0, points).Select(_ => Normal.Sample(random, 0, 1))];
                if (ChartRules.Of([.. away.Select(a => new ChartPoint("b", a))], away).FirstOrDefault() is { } first)
                {
                    return first.Place + 1;
                }
            }
        }

        Assert.Equal(91.75, Enumerable.Range(0, runs).Average(_ => Length()), 2.0);
    }

    /// <summary>
    /// The shares that the chart's page and the docs tell: of charts of 30 batches in control with limits from the first 20, by rules or
    /// moving ranges, and by rules alone.
    /// </summary>
    [Fact]
    public void Charts_in_control_give_a_signal_as_often_as_the_page_says()
    {
        var random = new Random(30);
        const int charts = 20_000;
        var (any, rules) = (0, 0);
        for (var i = 0; i < charts; i++)
        {
            ChartPoint[] points = [.. Enumerable.Range(0, 30).Select(_ => new ChartPoint("b", Normal.Sample(random, 100, 5)))];
            var chart = Assert.IsType<ChartOutcome.Charted>(ControlChart.Of(new([.. points], ChartScale.Linear))).Chart;
            rules += chart.Signals.IsEmpty ? 0 : 1;
            any += chart.Signals.IsEmpty && chart.RangeSignals.IsEmpty ? 0 : 1;
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            FormattableString.Invariant($"a signal: {100.0 * any / charts:0.0} % of charts, by the rules: {100.0 * rules / charts:0.0} %"));
        Assert.Equal(ControlChart.FalseSignals.Fraction, (double)any / charts, 0.012);
        Assert.Equal(0.28, (double)rules / charts, 0.012);
    }
}
