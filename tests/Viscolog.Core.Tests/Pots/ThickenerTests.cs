using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Pots;

public sealed class ThickenerTests
{
    /// <summary>
    /// The common range is that of emulsions with 30 % of active matter (common practice, no source): a 3 % stock needs ten times as much.
    /// </summary>
    [Theory]
    [InlineData(30, 1, 5)]
    [InlineData(3, 10, 50)]
    [InlineData(100, 0.3, 1.5)]
    [InlineData(0.5, 20, 100)]
    public void Active_matter_scales_the_range_that_is_assumed(double active, double low, double top)
    {
        var assumed = new Thickener("T") { Active = Percentage.FromPercent(active) };
        Assert.Equal((low, top), (assumed.UsualRange.Low.Percent, assumed.UsualRange.Top.Percent));
        Assert.False(assumed.IsRangeStated);
    }

    [Fact]
    public void A_stated_range_stands_whatever_the_active_matter()
    {
        var stated = new Thickener("T") { Active = Percentage.FromPercent(3), UsualRange = new(Dose.FromPercent(2), Dose.FromPercent(8)) };
        Assert.Equal(8, stated.UsualRange.Top.Percent);
        Assert.True(stated.IsRangeStated);
    }
}
