using Viscolog.Core.Pots;
using Viscolog.Core.Settling;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Settling;

public sealed class SettledTests
{
    [Fact]
    public void Without_a_posterior_two_minutes_settle_and_the_base_needs_none()
    {
        Assert.Equal(120, Settled.SecondsIn(Bench.Run(1000)), 12);
        var clay = Bench.Thickener with { Chemistry = ThickenerChemistry.Clay };
        Assert.Equal(7200, Settled.SecondsIn(Bench.Run(1000) with { Thickeners = [Bench.Thickener, clay] }), 9);
        Assert.Equal(double.PositiveInfinity, Settled.WaitSeconds(true, TimeSpan.FromSeconds(5)));
        Assert.Equal(double.PositiveInfinity, Settled.WaitSeconds(false, null));
        Assert.Equal(5, Settled.WaitSeconds(false, TimeSpan.FromSeconds(5)));
    }

    [Fact]
    public void Two_readings_settle_a_step_where_as_much_time_lay_between_them_as_before_the_first_and_they_agree_within_the_repeatability()
    {
        Assert.True(Settled.TwoAgree((20, 7), (40, 7.04), 0.05));
        Assert.True(Settled.TwoAgree((20, 7.04), (40, 7), 0.05));
        Assert.False(Settled.TwoAgree((20, 7), (39, 7.04), 0.05));
        Assert.False(Settled.TwoAgree((20, 7), (40, 7.06), 0.05));
        Assert.True(Settled.TwoAgree((3, 7), (13, 7.04), 0.05));
        Assert.False(Settled.TwoAgree((3, 7), (12, 7.04), 0.05));
    }

    /// <summary>
    /// With τ = 18 s a change of 0.4 leaves 0.4·e^(−1) after 18 s; below 0.02, half of 0.04, it is after ln 20 time constants, 53.9 s.
    /// </summary>
    [Fact]
    public void What_is_to_come_after_standing_and_how_long_until_half_the_repeatability()
    {
        var (remaining, isOver, more) = Settled.After([0.4, -0.4], [new(18), new(18)], 18, 0.04);
        Assert.Equal(0.4 / Math.E, remaining, 1e-12);
        Assert.False(isOver);
        Assert.Equal(40, more);
        Assert.Equal(55, Settled.After([0.4], [new(18)], 0, 0.04).MoreWaitSeconds);
    }

    [Fact]
    public void A_further_wait_doubles_the_time_stood_and_multiplies_it_by_five_and_a_minute_at_the_most()
    {
        Assert.Equal(100, Settled.After([0.01], [new(18)], 100, 0.04).MoreWaitSeconds);
        Assert.Equal(140, Settled.After([0.4], [new(5000)], 20, 0.04).MoreWaitSeconds, 10.0);
    }

    [Fact]
    public void A_wait_is_never_shorter_than_a_person_needs_nor_longer_than_a_day()
    {
        Assert.Equal(10, BuildUp.WaitUntilBelow([0.001], [new(20)], 0.02));
        Assert.Equal(86_400, BuildUp.WaitUntilBelow([0.4], [new(100_000)], 0.02));
        Assert.Equal(210, BuildUp.WaitUntilBelow([0.4], [new(68)], 0.02));
    }

    [Theory]
    [InlineData(61, 65)]
    [InlineData(121, 150)]
    [InlineData(1201, 1500)]
    [InlineData(14_401, 18_000)]
    public void Long_waits_are_told_in_coarse_steps(double seconds, double told) => Assert.Equal(told, BuildUp.Rounded(seconds));

    /// <summary>Three draws in four settle by the wait told; the slowest does not count.</summary>
    [Fact]
    public void A_wait_is_long_enough_for_three_draws_in_four()
        => Assert.Equal(55, BuildUp.WaitUntilBelow([0.4, 0.4, 0.4, 0.4, 0.4], [new(5), new(10), new(12), new(18), new(9000)], 0.02));

    [Theory]
    [InlineData(20, 1)]
    [InlineData(600, 0.5)]
    public void A_stretched_exponential_has_a_share_left_and_the_time_when_that_is_so(double timeConstant, double stretch)
    {
        var kinetics = new Kinetics(timeConstant, stretch);
        Assert.Equal(1 / Math.E, kinetics.Remaining(timeConstant), 1e-12);
        Assert.Equal(1, kinetics.Remaining(0), 12);
        Assert.Equal(0, kinetics.Remaining(double.PositiveInfinity), 12);
        Assert.Equal(0.02, kinetics.Remaining(kinetics.Until(0.02)), 1e-12);
        Assert.Equal(0, kinetics.Until(1.5));
        // With β = ½ four time constants leave e^(−2).
        Assert.Equal(Math.Exp(-Math.Pow(4, stretch)), kinetics.Remaining(4 * timeConstant), 1e-12);
    }

    /// <summary>
    /// The prior in numbers: an alkali-swellable thickener takes minutes one time in twelve, a cellulosic takes them as a rule.
    /// </summary>
    [Theory]
    [InlineData(ThickenerChemistry.AlkaliSwellable, 20, 1, 3.00)]
    [InlineData(ThickenerChemistry.Associative, 20, 1, 3.00)]
    [InlineData(ThickenerChemistry.Cellulosic, 400, 1, 3.00)]
    [InlineData(ThickenerChemistry.Clay, 1200, 1, 3.67)]
    public void Time_constants_before_any_reading_go_by_the_chemistry(
        ThickenerChemistry chemistry,
        double median,
        double deviate,
        double factor)
    {
        var prior = KineticsPrior.Of(chemistry);
        Assert.Equal(median, prior.At(0, 0).TimeConstant, 1e-9);
        Assert.Equal(factor, prior.At(deviate, 0).TimeConstant / median, 0.01);
        Assert.Equal(0.78, prior.At(0, 0).Stretch, 0.005);
        Assert.Equal(0.47, prior.At(0, 1.645).Stretch, 0.005);
    }
}
