using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Tests.Wording;

public sealed class ShownTests
{
    [Theory]
    [InlineData(45, "45 s")]
    [InlineData(119, "119 s")]
    [InlineData(150, "2 min 30 s")]
    [InlineData(480, "8 min 00 s")]
    [InlineData(1500, "25 min")]
    [InlineData(1510, "25 min 10 s")]
    [InlineData(6900, "115 min")]
    [InlineData(10_800, "3 h")]
    [InlineData(12_000, "3 h 20 min")]
    [InlineData(86_400, "24 h")]
    public void A_long_wait_is_said_in_round_numbers(double seconds, string said)
        => Assert.Equal(said, Shown.Duration(TimeSpan.FromSeconds(seconds)));

    /// <summary>9 000 mPa·s ±12.5 % ends at 10 125: told as 10 120, a body of 10 123 would seem to be over.</summary>
    [Fact]
    public void The_edges_of_a_band_are_told_whole()
    {
        var band = ViscosityBand.Between(Viscosity.FromMilliPascalSeconds(7875), Viscosity.FromMilliPascalSeconds(10_125));
        Assert.Equal("7\u2009875 to 10\u2009125", Shown.Edges(band));
    }
}
