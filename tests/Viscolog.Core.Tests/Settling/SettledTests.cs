using Viscolog.Core.Settling;
using Xunit;

namespace Viscolog.Core.Tests.Settling;

public sealed class SettledTests
{
    [Fact]
    public void Without_a_posterior_two_minutes_settle_and_the_base_needs_none()
    {
        Assert.Equal(120, Settled.Seconds, 12);
        Assert.Equal(double.PositiveInfinity, Settled.WaitSeconds(true, TimeSpan.FromSeconds(5)));
        Assert.Equal(double.PositiveInfinity, Settled.WaitSeconds(false, null));
        Assert.Equal(5, Settled.WaitSeconds(false, TimeSpan.FromSeconds(5)));
    }

    [Fact]
    public void Two_readings_settle_a_step_where_time_lay_between_them_and_they_agree_within_the_repeatability()
    {
        Assert.True(Settled.TwoAgree((20, 7), (30, 7.04), 0.05));
        Assert.True(Settled.TwoAgree((20, 7.04), (30, 7), 0.05));
        Assert.False(Settled.TwoAgree((20, 7), (29, 7.04), 0.05));
        Assert.False(Settled.TwoAgree((20, 7), (30, 7.06), 0.05));
    }

    /// <summary>With τ = 18 s a change of 0.4 leaves 0.4·e^(−1) after 18 s; below 0.02, half of 0.04, it is after ln 20 time constants, 53.9 s.</summary>
    [Fact]
    public void What_is_to_come_after_standing_and_how_long_until_half_the_repeatability()
    {
        var (remaining, more) = Settled.After([0.4, -0.4], [18, 18], 18, 0.04);
        Assert.Equal(0.4 / Math.E, remaining, 1e-12);
        Assert.Equal(40, more);
        Assert.Equal(55, Settled.After([0.4], [18], 0, 0.04).MoreWaitSeconds);
    }

    [Fact]
    public void A_wait_is_never_shorter_than_a_person_needs_nor_longer_than_a_quarter_of_an_hour()
    {
        Assert.Equal(10, BuildUp.WaitUntilBelow([0.001], [20], 0.02));
        Assert.Equal(900, BuildUp.WaitUntilBelow([0.4], [1000], 0.02));
        Assert.Equal(210, BuildUp.WaitUntilBelow([0.4], [68], 0.02));
    }
}
