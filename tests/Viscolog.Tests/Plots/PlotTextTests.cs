using CsCheck;
using Viscolog.Plots;

namespace Viscolog.Tests.Plots;

public sealed class PlotTextTests
{
    [Theory]
    [InlineData(850, "850")]
    [InlineData(12_000, "12 000")]
    [InlineData(3_874, "3 870")]
    [InlineData(999.6, "1 000")]
    [InlineData(0.8512, "0.851")]
    [InlineData(1_234_567, "1 230 000")]
    [InlineData(0, "0")]
    [InlineData(2e18, "2E+18")]
    public void Numbers_keep_three_figures_and_set_thousands_apart(double value, string expected)
        => Assert.Equal(expected, PlotText.Number(value).Replace('\u2009', ' '));

    [Fact]
    public void Ticks_lie_in_their_range_in_rising_order_and_are_few()
        => Gen.Select(Gen.Double[-6, 12], Gen.Double[0.05, 10]).Sample((from, decades) =>
        {
            var (low, high) = (Math.Pow(10, from), Math.Pow(10, from + decades));
            var ticks = Ticks.Logarithmic(low, high);
            Assert.InRange(ticks.Count, 2, 14);
            Assert.All(ticks, t => Assert.InRange(t, low * 0.999999, high * 1.000001));
            Assert.Equal(ticks.Order(), ticks);
        });
}
