using Viscolog.Core.Measuring;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Published;

/// <summary>Slump and falling ball against tabled values.</summary>
public sealed class SlumpTests
{
    /// <summary>
    /// Pashias, Boger, Summers and Glenister, J. Rheol. 40 (1996) 1179–1189 (formula from memory): values solved apart from this program,
    /// last column for 1200 kg/m³ and 0.10 m.
    /// </summary>
    [Theory]
    [InlineData(0.1, 0.29377, 345.708)]
    [InlineData(0.2, 0.219252, 258.015)]
    [InlineData(0.3, 0.166877, 196.381)]
    [InlineData(0.4, 0.12624, 148.559)]
    [InlineData(0.5, 0.0933412, 109.844)]
    [InlineData(0.6, 0.0661745, 77.874)]
    [InlineData(0.7, 0.0436146, 51.3256)]
    [InlineData(0.8, 0.0250356, 29.4619)]
    [InlineData(0.9, 0.0102255, 12.0334)]
    public void Slump_of_a_cylinder(double part, double reduced, double pascals)
    {
        Assert.Equal(reduced, SlumpCylinder.Solve(part), reduced * 1e-5);
        var setup = new MethodSetup { CylinderHeight = Length.FromMillimeters(100) };
        var converted = Assert.IsType<Conversion.Converted>(
            SlumpCylinder.Convert(Length.FromMillimeters(100 * part), setup, Density.FromGramsPerMilliliter(1.2)));
        Assert.Equal(pascals, converted.Reading.YieldStress!.Value.Pascals, pascals * 1e-5);
        Assert.Equal(pascals * 1000, converted.Reading.Body!.Value.MilliPascalSeconds, pascals * 1e-2);
    }

    /// <summary>
    /// Wall factors tabled by Haberman and Sayre (1958), as in Happel and Brenner, Low Reynolds Number Hydrodynamics (from memory):
    /// 1.263, 1.680, 2.371.
    /// </summary>
    [Theory]
    [InlineData(0.1, 1.263)]
    [InlineData(0.2, 1.680)]
    [InlineData(0.3, 2.371)]
    public void The_wall_slows_a_ball(double width, double factor)
        => Assert.Equal(1, FallingBall.Wall(width) * factor, 0.005);

    /// <summary>
    /// Glycerol at 20 °C, 1410 mPa·s (Segur and Oberstar, Ind. Eng. Chem. 43 (1951) 2117) and 1.261 g/mL (from memory): a steel ball of
    /// 1.5 mm falls 100 mm in an endless vessel in 17.6 s by Stokes' law, worked by hand.
    /// </summary>
    [Fact]
    public void A_steel_ball_in_glycerol()
    {
        var setup = new MethodSetup
        {
            BallDiameter = Length.FromMillimeters(1.5),
            BallDensity = Density.FromGramsPerMilliliter(7.8),
            Fall = Length.FromMillimeters(100)
        };
        var converted = Assert.IsType<Conversion.Converted>(
            FallingBall.Convert(TimeSpan.FromSeconds(17.59), setup, Density.FromGramsPerMilliliter(1.261)));
        Assert.Equal(1410, converted.Reading.Dynamic!.Value.MilliPascalSeconds, 2.0);
    }
}
