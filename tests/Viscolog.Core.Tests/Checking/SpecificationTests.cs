using Viscolog.Core.Checking;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Checking;

public sealed class SpecificationTests
{
    private static readonly Specification Bare = new("wall gel");

    [Fact]
    public void What_is_not_stated_has_a_default()
    {
        Assert.Equal((2, 23.0), (Bare.MinimumReadingsInForce, Bare.ReferenceTemperatureInForce.Celsius));
        var stated = Bare with { MinimumReadings = 5, ReferenceTemperature = Temperature.FromCelsius(20) };
        Assert.Equal((5, 20.0), (stated.MinimumReadingsInForce, stated.ReferenceTemperatureInForce.Celsius));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void A_verdict_needs_a_reading(int count)
        => Assert.Throws<ArgumentOutOfRangeException>("MinimumReadings", () => Bare with { MinimumReadings = count });

    [Fact]
    public void The_body_keeps_the_form_in_which_it_was_stated()
    {
        var value = Bare with { Body = new Target.Value(Viscosity.FromMilliPascalSeconds(1000), Percentage.FromPercent(10)) };
        var ends = Bare with { Body = new Target.Ends(Viscosity.FromMilliPascalSeconds(900), Viscosity.FromMilliPascalSeconds(1100)) };
        // 1000 mPa·s less and more 10 %; the middle of two ends is their geometric mean.
        Assert.Equal((900, 1000, 1100), Rounded(value.Body!.Band));
        Assert.Equal((900, 994.9874, 1100), Rounded(ends.Body!.Band));
    }

    [Theory]
    [InlineData(9.2, 8.5)]
    [InlineData(8.5, 8.5)]
    public void A_band_of_pH_rises(double low, double high)
        => Assert.Throws<ArgumentOutOfRangeException>("High", () => new AcidityBand(Acidity.FromPh(low), Acidity.FromPh(high)));

    private static (double Low, double Aim, double High) Rounded(ViscosityBand band)
        => (Math.Round(band.Low.MilliPascalSeconds, 4), Math.Round(band.Aim.MilliPascalSeconds, 4),
            Math.Round(band.High.MilliPascalSeconds, 4));
}
