using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>Cups and Krebs units against pairs published apart from the equations.</summary>
public sealed class CupTests
{
    /// <summary>
    /// Rounded class limits for viscous liquids at 23 °C: ADR 2019, 2.2.3.1.4, and IMDG Code, 2.3.2.2 (seen). They are limits, not
    /// measurements, so they hold to 8 % only.
    /// </summary>
    [Theory]
    [InlineData("iso-2431-4", 60, 80)]
    [InlineData("iso-2431-4", 100, 135)]
    [InlineData("iso-2431-6", 32, 220)]
    [InlineData("iso-2431-6", 44, 300)]
    [InlineData("iso-2431-6", 100, 700)]
    public void Class_limits_of_the_transport_regulations_hold_within_8_per_cent(string cup, double seconds, double published)
        => Assert.InRange(At(cup, seconds) / published, 0.92, 1.08);

    /// <summary>End points of the cups of ISO 2431 as printed cup tables have them (seen). None was found for the 5 mm cup.</summary>
    [Theory]
    [InlineData("iso-2431-3", 27, 4.6)]
    [InlineData("iso-2431-3", 120, 52)]
    [InlineData("iso-2431-4", 21, 19)]
    [InlineData("iso-2431-4", 120, 163)]
    [InlineData("iso-2431-6", 17, 84)]
    [InlineData("iso-2431-6", 120, 823)]
    public void End_points_of_the_ISO_cups_hold_within_1_5_per_cent(string cup, double seconds, double published)
        => Assert.InRange(At(cup, seconds) / published, 0.985, 1.015);

    [Fact]
    public void Only_the_cup_without_published_values_is_marked_as_not_checked()
        => Assert.Equal("iso-2431-5", Assert.Single(Cups.All, c => !c.IsChecked).Id);

    /// <summary>
    /// ASTM D4212, 13.1.1 (seen): times of 44 mL dip cups scatter by 3.7 % within a laboratory and by 11.5 % between them. At 20 s in cup
    /// no. 2, d ln ν/d ln t = t/(t − t₀) = 20/6, so 3.7 % of the time are 12.3 % of the viscosity.
    /// </summary>
    [Theory]
    [InlineData("d4212-44ml-2", 20, 12.333, 36.28)]
    [InlineData("d4212-44ml-2", 80, 4.485, 13.19)]
    [InlineData("d4212-44ml-5", 40, 3.7, 10.89)]
    public void Scatter_and_calibration_of_a_dip_cups_time_go_through_its_slope(string cup, double seconds, double repeatability,
        double calibration)
    {
        var value = new InstrumentValue.CupTime(TimeSpan.FromSeconds(seconds));
        var reading = Assert.IsType<Conversion.Converted>(Conversions.Of(Method.Find(cup)!, value, MethodSetup.None, null)).Reading;
        Assert.Equal(repeatability, Method.Find(cup)!.RepeatabilityAt(value).Percent, 0.001);
        Assert.Equal(repeatability, reading.Repeatability.Percent, 0.001);
        Assert.Equal(Math.Sqrt((11.5 * 11.5) - (3.7 * 3.7)) * repeatability / 3.7, calibration, 0.02);
        Assert.Equal(calibration, reading.CalibrationUncertainty.Percent, 0.06);
    }

    /// <summary>
    /// The standard oils again: from 70 to 85 KU ln η rises by ln(10/4), so 1 KU is 6.1 %; from 85 to 95 by ln(14/10), 3.4 %. An
    /// instrument is passed within 5 % of an oil's units (ASTM D562-01, seen); 1.5 % of scatter are from memory.
    /// </summary>
    [Theory]
    [InlineData(80, 7.330, 17.292)]
    [InlineData(95, 4.795, 13.60)]
    public void Scatter_and_calibration_of_Krebs_units_go_through_their_slope(double units, double repeatability, double calibration)
    {
        var reading = Assert.IsType<Conversion.Converted>(KrebsScale.Convert(units)).Reading;
        Assert.Equal(repeatability, reading.Repeatability.Percent, 0.001);
        Assert.Equal(repeatability, Method.Find("krebs")!.RepeatabilityAt(new InstrumentValue.Krebs(units)).Percent, 0.001);
        Assert.Equal(calibration, reading.CalibrationUncertainty.Percent, 0.01);
    }

    /// <summary>Where what is shown is proportional to the body, its scatter is the method's.</summary>
    [Fact]
    public void A_torque_scatters_like_its_viscosity()
        => Assert.Equal(Method.Find("rotational")!.Repeatability,
            Method.Find("rotational")!.RepeatabilityAt(new InstrumentValue.Torque(Percentage.FromPercent(40), 20)));

    /// <summary>
    /// A worked example at 46 s for the five ASTM D1200 cups (testingmethodsop.blogspot.com/2022/09/viscosity.html, seen; its value for
    /// cup 4 is an arithmetic slip, 159.81 is what its equation gives). 46 s is below cup 1's limit: the equation alone is checked.
    /// </summary>
    [Theory]
    [InlineData("d1200-1", 5.39)]
    [InlineData("d1200-2", 40.32)]
    [InlineData("d1200-3", 91.06)]
    [InlineData("d1200-4", 159.81)]
    [InlineData("d1200-5", 532.4)]
    public void Worked_example_of_the_D1200_cups(string cup, double published)
        => Assert.Equal(published, At(cup, 46), 0.005);

    /// <summary>
    /// Ranges in mm²/s as a maker publishes them for dip cups (cannoninstrument.com/Cups.htm, seen; rounded): both ends lie within what
    /// the limits in seconds give, to a quarter.
    /// </summary>
    [Theory]
    [InlineData("d4212-44ml-2", 20, 250)]
    [InlineData("d4212-44ml-3", 100, 800)]
    [InlineData("d4212-44ml-4", 200, 1200)]
    [InlineData("d4212-44ml-5", 400, 1800)]
    [InlineData("d4212-23ml-3", 30, 120)]
    [InlineData("d4212-23ml-4", 70, 270)]
    [InlineData("d4212-23ml-6", 320, 1300)]
    public void Dip_cups_cover_their_published_ranges(string cup, double low, double high)
    {
        var equation = Cups.Find(Method.Find(cup)!)!;
        Assert.InRange(equation.At(equation.Least)!.Value.SquareMillimetersPerSecond / low, 0.75, 1.5);
        Assert.InRange(equation.At(equation.Most)!.Value.SquareMillimetersPerSecond / high, 0.75, 1.25);
    }

    /// <summary>ASTM D562-10, note 1 (seen): oils of 4, 10 and 14 P read about 70, 85 and 95 KU.</summary>
    [Theory]
    [InlineData(70, 400)]
    [InlineData(85, 1000)]
    [InlineData(95, 1400)]
    public void Standard_oils_read_their_Krebs_units(double units, double published)
        => Assert.Equal(published, Assert.IsType<Conversion.Converted>(KrebsScale.Convert(units))
            .Reading.Dynamic!.Value.MilliPascalSeconds, 1e-6);

    private static double At(string cup, double seconds)
        => Cups.Find(Method.Find(cup)!)!.At(TimeSpan.FromSeconds(seconds))!.Value.SquareMillimetersPerSecond;
}
