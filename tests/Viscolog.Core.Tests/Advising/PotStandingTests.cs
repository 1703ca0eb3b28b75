using CsCheck;
using Viscolog.Core.Advising;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

/// <summary>Where a pot stands to several bands at once.</summary>
public sealed class PotStandingTests
{
    private static readonly Gen<QuantityChances> Chances
        = Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Select((inBand, over) => new QuantityChances(inBand * (1 - over), over));

    [Fact]
    public void The_three_chances_sum_to_all() => Chances.Array[1, 2].Sample(each =>
    {
        var all = BandChances.Of(each);
        Assert.Equal(1, all.Under.Fraction + all.InBand.Fraction + all.Over.Fraction, 1e-12);
        Assert.Equal(each.Aggregate(1.0, (p, q) => p * q.InBand), all.InBand.Fraction, 1e-12);
        Assert.Equal(1 - each.Aggregate(1.0, (p, q) => p * (1 - q.Over)), all.Over.Fraction, 1e-12);
    });

    /// <summary>Worked by hand: 0.9 and 0.8 in band, 0.05 and 0.1 over.</summary>
    [Fact]
    public void Two_quantities_are_in_band_together_by_the_product()
    {
        var both = BandChances.Of([new(0.9, 0.05), new(0.8, 0.1)]);
        Assert.Equal(72, both.InBand.Percent, 1e-9);
        Assert.Equal(100 * (1 - (0.95 * 0.9)), both.Over.Percent, 1e-9);
        Assert.Equal(13.5, both.Under.Percent, 1e-9);
    }
}
