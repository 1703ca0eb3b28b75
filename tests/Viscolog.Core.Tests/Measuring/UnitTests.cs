using CsCheck;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Measuring;

/// <summary>The table of units; exact factors from NIST Special Publication 811 (2008), appendix B (from memory).</summary>
public sealed class UnitTests
{
    [Theory]
    [InlineData("12", "cP", "mPas", "12")]
    [InlineData("12", "P", "mPas", "1200")]
    [InlineData("0.85", "Pas", "cP", "850")]
    [InlineData("7.5", "cSt", "mm2/s", "7.5")]
    [InlineData("1", "us-fl-oz", "mL", "29.5735295625")]
    [InlineData("2", "us-cup", "mL", "473.176473")]
    [InlineData("1", "us-cup", "us-fl-oz", "8")]
    [InlineData("1", "lb", "g", "453.59237")]
    [InlineData("16", "oz", "lb", "1")]
    [InlineData("1", "gal", "us-fl-oz", "128")]
    [InlineData("1", "us-gal", "L", "3.785411784")]
    [InlineData("73.4", "F", "C", "23")]
    [InlineData("-40", "C", "F", "-40")]
    public void Values_convert_exactly(string value, string from, string to, string result)
        => Assert.Equal(Parse(result), Unit.Find(from)!.To(Unit.Find(to)!, Parse(value), null));

    [Fact]
    public void A_density_joins_mass_and_volume_and_both_viscosities()
    {
        var density = Density.FromGramsPerMilliliter(1.25);
        Assert.Equal(125m, Unit.Find("mL")!.To(Unit.Find("g")!, 100m, density));
        Assert.Equal(80m, Unit.Find("cP")!.To(Unit.Find("cSt")!, 100m, density));
        Assert.Null(Unit.Find("mL")!.To(Unit.Find("g")!, 100m, null));
        Assert.Null(Unit.Find("mL")!.To(Unit.Find("cP")!, 100m, density));
    }

    [Fact]
    public void What_was_typed_comes_back_as_it_was_typed()
        => Gen.Select(Gen.Int[0, Unit.All.Count - 1], Gen.Int[-999_999, 999_999], Gen.Int[0, 3]).Sample((i, digits, places) =>
        {
            var typed = digits / (decimal)Math.Pow(10, places);
            Assert.Equal(typed, decimal.Round(Unit.All[i].FromKept(Unit.All[i].ToKept(typed)), 12));
        });

    [Fact]
    public void Every_name_finds_one_unit_and_capitals_are_forgiven_where_they_can_be()
    {
        Assert.All(Unit.All, u => Assert.All(u.Typed, t => Assert.Same(u, Unit.Find(t))));
        Assert.Same(Unit.Find("mPas"), Unit.Find("MPAS"));
        Assert.Null(Unit.Find("furlong"));
    }

    private static decimal Parse(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
