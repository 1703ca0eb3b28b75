using CsCheck;
using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Measuring;

/// <summary>Refusals, warnings and hints of the methods.</summary>
public sealed class ConversionTests
{
    private static readonly Density Water = Density.FromGramsPerMilliliter(1);

    private static readonly MethodSetup Ball = new()
    {
        BallDiameter = Length.FromMillimeters(3),
        BallDensity = Density.FromGramsPerMilliliter(7.8),
        Fall = Length.FromMillimeters(200),
        JarDiameter = Length.FromMillimeters(60),
    };

    [Fact]
    public void Every_cup_method_has_an_equation_and_every_equation_a_method()
        => Assert.Equal(
            Method.All.Where(m => m.Scales.Contains(InstrumentScale.CupSeconds)).Select(m => m.Id),
            Cups.All.Select(c => c.Id),
            StringComparer.Ordinal);

    [Fact]
    public void Cup_times_and_viscosities_go_back_and_forth()
        => Gen.Select(Gen.Int[0, Cups.All.Count - 1], Gen.Double[0, 1]).Sample((i, part) =>
        {
            var cup = Cups.All[i];
            var time = cup.Least + (part * (cup.Most - cup.Least));
            Assert.Equal(time.TotalSeconds, cup.TimeFor(cup.At(time)!.Value).TotalSeconds, 1e-5);
        });

    [Fact]
    public void Longer_times_mean_thicker_liquids()
        => Assert.All(Cups.All, c => Assert.True(c.At(c.Least) < c.At(c.Most)));

    [Theory]
    [InlineData("iso-2431-4", 20, "iso-2431-3")]
    [InlineData("iso-2431-4", 200, "iso-2431-6")]
    [InlineData("iso-2431-3", 5, "finer orifice")]
    [InlineData("iso-2431-6", 900, "wider orifice")]
    [InlineData("d1200-4", 12, "d1200-1")]
    [InlineData("d4212-44ml-2", 95, "d4212-44ml-3")]
    public void A_time_outside_the_limits_is_refused_with_the_cup_that_fits(string cup, double seconds, string named)
        => Assert.Contains(named, Refused(Cups.Convert(Method.Find(cup)!, TimeSpan.FromSeconds(seconds), Water)), StringComparison.Ordinal);

    [Fact]
    public void A_time_near_a_limit_names_the_cup_that_would_suit_better()
    {
        Assert.Contains("iso-2431-5", Converted(Cups.Convert(Method.Find("iso-2431-4")!, TimeSpan.FromSeconds(99), Water)).Better, StringComparison.Ordinal);
        Assert.Null(Converted(Cups.Convert(Method.Find("iso-2431-4")!, TimeSpan.FromSeconds(60), Water)).Better);
    }

    [Fact]
    public void Kinematic_times_density_is_dynamic()
    {
        var reading = Converted(Cups.Convert(Method.Find("iso-2431-4")!, TimeSpan.FromSeconds(60), Density.FromGramsPerMilliliter(1.3)));
        Assert.Equal(78.8667 * 1.3, reading.Dynamic!.Value.MilliPascalSeconds, 0.001);
        var refused = Conversions.ToBody(Method.Find("iso-2431-4")!, new InstrumentValue.CupTime(TimeSpan.FromSeconds(60)), MethodSetup.None, null);
        Assert.Contains("density", Refused(refused), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(50)]
    [InlineData(140)]
    public void Krebs_units_off_the_paddles_range_are_refused(double units) => Assert.Contains("useful range", Refused(KrebsScale.Convert(units)), StringComparison.Ordinal);

    [Fact]
    public void Krebs_units_beyond_the_oils_are_less_sure()
        => Assert.True(Converted(KrebsScale.Convert(110)).Uncertainty > Converted(KrebsScale.Convert(80)).Uncertainty);

    [Fact]
    public void A_low_torque_is_warned_of_and_less_sure()
    {
        var (low, good) = (Converted(Torque(5)), Converted(Torque(50)));
        Assert.Contains(low.Warnings, w => w.Contains("under 10 %", StringComparison.Ordinal));
        Assert.Empty(good.Warnings);
        Assert.True(low.Uncertainty.Percent > 2 * good.Uncertainty.Percent);
        Assert.Contains("speed", low.Better, StringComparison.Ordinal);
        Assert.Contains("full scale", Refused(Torque(104)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_ball_that_falls_too_fast_is_refused_with_a_size_that_creeps()
    {
        var reason = Refused(FallingBall.Convert(TimeSpan.FromSeconds(1.2), Ball, Water));
        Assert.Contains("Re = ", reason, StringComparison.Ordinal);
        Assert.Contains("mm or a lighter one", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ball_needs_to_sink_and_room_to_fall()
    {
        Assert.Contains("not denser", Refused(FallingBall.Convert(TimeSpan.FromSeconds(20), Ball, Density.FromGramsPerMilliliter(8))), StringComparison.Ordinal);
        Assert.Contains("wider jar", Refused(FallingBall.Convert(TimeSpan.FromSeconds(20), Ball with { JarDiameter = Length.FromMillimeters(8) }, Water)), StringComparison.Ordinal);
        Assert.Contains("ball_diameter_mm", Refused(FallingBall.Convert(TimeSpan.FromSeconds(20), MethodSetup.None, Water)), StringComparison.Ordinal);
        Assert.Contains(Converted(FallingBall.Convert(TimeSpan.FromSeconds(60), Ball with { JarDiameter = null }, Water)).Warnings, w => w.Contains("wall", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(2, "too stiff")]
    [InlineData(97, "too thin")]
    [InlineData(130, "too thin")]
    public void A_slump_at_either_end_is_refused(double millimeters, string said)
        => Assert.Contains(said, Refused(SlumpCylinder.Convert(Length.FromMillimeters(millimeters), new() { CylinderHeight = Length.FromMillimeters(100) }, Water)), StringComparison.Ordinal);

    [Fact]
    public void A_flat_wide_cylinder_is_warned_of()
        => Assert.NotEmpty(Converted(SlumpCylinder.Convert(
            Length.FromMillimeters(40),
            new() { CylinderHeight = Length.FromMillimeters(100), CylinderDiameter = Length.FromMillimeters(200) },
            Water)).Warnings);

    private static Conversion Torque(double percent) => RotationalTorque.Convert(Percentage.FromPercent(percent), Viscosity.FromMilliPascalSeconds(100), 20);

    private static string Refused(Conversion conversion) => Assert.IsType<Conversion.Refused>(conversion).Reason;

    private static ConvertedReading Converted(Conversion conversion) => Assert.IsType<Conversion.Converted>(conversion).Reading;
}
