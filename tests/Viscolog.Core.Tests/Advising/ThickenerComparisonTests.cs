using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

public sealed class ThickenerComparisonTests
{
    private static readonly ViscosityBand Band = ViscosityBand.Around(Viscosity.FromMilliPascalSeconds(5000), Percentage.FromPercent(15));

    [Fact]
    public void The_stronger_thickener_has_the_least_dose_and_price_may_turn_it_round()
    {
        var (contenders, aside) = ThickenerComparison.Of([Named("weak", 1, 3, 40), Named("strong", 2, 10, 40)], Band, null);
        Assert.Empty(aside);
        Assert.Equal("strong, weak", string.Join(", ", contenders.Select(c => c.Name)));
        Assert.True(contenders[0].Dose!.Median < contenders[1].Dose!.Median);
        Assert.True(contenders[0].Cost!.Median > contenders[1].Cost!.Median);
        Assert.All(contenders, c => Assert.InRange(c.Dose!.Median, c.Dose.Low, c.Dose.High ?? double.PositiveInfinity));
        Assert.All(contenders, c => Assert.Equal(0.6 * c.Dose!.Median, c.Water!.Median, 1e-9));
        Assert.All(contenders, c => Assert.Equal(c.Dose!.Median * (double)c.Thickeners[0].PricePerKilogram! / 100, c.Cost!.Median, 1e-9));
    }

    [Fact]
    public void Without_price_or_active_matter_there_is_no_cost_and_no_water()
    {
        var run = Named("plain", 1, 1, 50);
        var bare = run with { Thickeners = [run.Thickeners[0] with { PricePerKilogram = null, Active = null }] };
        var only = Assert.Single(ThickenerComparison.Of([bare], Band, null).Contenders);
        Assert.Null(only.Cost);
        Assert.Null(only.Water);
    }

    [Fact]
    public void A_pair_needs_a_string_and_then_stands_beside_the_others()
    {
        var pair = PairBench.Along(20000, (20, 30), ("S", 0.7), ("A", 0.7), ("S", 0.7), ("A", 0.7), ("A", 0.7));
        Assert.Contains("string", Assert.Single(ThickenerComparison.Of([pair], Band, null).LeftAside), StringComparison.Ordinal);
        var only = Assert.Single(
            ThickenerComparison.Of(
                [pair],
                ViscosityBand.Around(Viscosity.FromMilliPascalSeconds(PairBench.Body(2, 1.6)), Percentage.FromPercent(15)),
                new(Length.FromMillimeters(12), Length.FromMillimeters(18))).Contenders);
        Assert.Equal("A + S", only.Name);
        Assert.InRange(only.Dose!.Median, 2.6, 4.6);
    }

    [Fact]
    public void Too_few_readings_are_said()
        => Assert.Contains(
            "two doses",
            Assert.Single(
                ThickenerComparison.Of(
                    [Bench.AlongSigmoid(5000, 0.5) with { Entries = [Bench.Dose(0.5), Bench.Read(1200)] }], Band, null).LeftAside),
            StringComparison.Ordinal);

    /// <summary>A run along 1000·e^(strength·dose) by a thickener with a price.</summary>
    private static Run Named(string name, double strength, int price, double active)
    {
        var run = Bench.Run(
            5000,
            Bench.Read(1000),
            new Entry.Dosed(name, Mass.FromGrams(0.3)),
            Bench.Read(1000 * Math.Exp(0.3 * strength)),
            new Entry.Dosed(name, Mass.FromGrams(0.4)),
            Bench.Read(1000 * Math.Exp(0.7 * strength)));
        return run with
        {
            Thickeners =
            [
                new Thickener(name) { PricePerKilogram = price, Active = Percentage.FromPercent(active), UsualRange = DoseRange.Common },
            ],
        };
    }
}
