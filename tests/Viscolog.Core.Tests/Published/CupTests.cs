using Viscolog.Core.Measuring;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>Cups and Krebs units against pairs published apart from the equations.</summary>
public sealed class CupTests
{
    /// <summary>
    /// Rounded class limits for viscous liquids at 23 °C: ADR 2019, 2.2.3.1.4, and IMDG Code, 2.3.2.2 (seen). They are limits, not measurements, so
    /// they hold to 8 % only.
    /// </summary>
    [Theory]
    [InlineData("iso-2431-4", 60, 80)]
    [InlineData("iso-2431-4", 100, 135)]
    [InlineData("iso-2431-6", 32, 220)]
    [InlineData("iso-2431-6", 44, 300)]
    [InlineData("iso-2431-6", 100, 700)]
    public void Class_limits_of_the_transport_regulations_hold_within_8_per_cent(string cup, double seconds, double published)
        => Assert.InRange(At(cup, seconds) / published, 0.92, 1.08);

    /// <summary>
    /// A worked example at 46 s for the five ASTM D1200 cups (testingmethodsop.blogspot.com/2022/09/viscosity.html, seen; its value for cup 4 is an
    /// arithmetic slip, 159.81 is what its equation gives). 46 s is below cup 1's limit: the equation alone is checked.
    /// </summary>
    [Theory]
    [InlineData("d1200-1", 5.39)]
    [InlineData("d1200-2", 40.32)]
    [InlineData("d1200-3", 91.06)]
    [InlineData("d1200-4", 159.81)]
    [InlineData("d1200-5", 532.4)]
    public void Worked_example_of_the_D1200_cups(string cup, double published)
        => Assert.Equal(published, At(cup, 46), 0.005);

    /// <summary>Ranges in mm²/s as a maker publishes them for dip cups (cannoninstrument.com/Cups.htm, seen; rounded): both ends lie within what the limits in seconds give, to a quarter.</summary>
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
        => Assert.Equal(published, Assert.IsType<Conversion.Converted>(KrebsScale.Convert(units)).Reading.Dynamic!.Value.MilliPascalSeconds, 1e-6);

    private static double At(string cup, double seconds) => Cups.Find(Method.Find(cup)!)!.At(TimeSpan.FromSeconds(seconds))!.Value.SquareMillimetersPerSecond;
}
