using Viscolog.Core.Quantities;
using Viscolog.Languages;
using Viscolog.Tables;
using Viscolog.Typing;

namespace Viscolog.Tests.Tui;

public sealed class TypedNumberTests
{
    [Theory]
    [InlineData("12000", 12000)]
    [InlineData("12 000", 12000)]
    [InlineData("12\u2009000", 12000)]
    [InlineData("1\u00a0234\u202f567,5", 1_234_567.5)]
    [InlineData("12 000 cP", 12000)]
    [InlineData("1.45 Pa.s", 1450)]
    [InlineData("0,84", 0.84)]
    public void A_number_reads_as_it_was_typed(string text, double value)
    {
        Assert.Equal(value, TypedNumber.Read(text, NumberRange.Viscosity, out var error));
        Assert.Null(error);
    }

    /// <summary>In German a point may part thousands, and a comma begins the decimals of what fills a field.</summary>
    [Fact]
    public void Where_german_is_spoken_a_point_may_part_thousands_as_well()
    {
        Tongue.Speak(Language.German);
        Assert.Null(TypedNumber.Read("12.000", NumberRange.Viscosity, out var error));
        Assert.Contains("12,000 oder 12000", error, StringComparison.Ordinal);
        Assert.Null(TypedNumber.Read("12,000", NumberRange.Viscosity, out _));
        Assert.Equal(0.5, TypedNumber.Read("0.500", NumberRange.Viscosity, out _));
        Assert.Equal(1234.5, TypedNumber.Read("1234.5", NumberRange.Viscosity, out _));
        Assert.Equal(("1,36", "9000"), (TypedNumber.Filled(1.36), TypedNumber.Filled(9000)));
        Assert.Equal(1.2345, TypedNumber.Read(TypedNumber.Filled(1.2345), NumberRange.Viscosity, out _));
    }

    [Fact]
    public void What_fills_a_field_has_a_point_in_english() => Assert.Equal("1.36", TypedNumber.Filled(1.36));

    [Theory]
    [InlineData("8,5-9,2", "8.5-9.2")]
    [InlineData("1,36", "1.36")]
    [InlineData("12,000", "12,000")]
    [InlineData("1.36", "1.36")]
    [InlineData("2026-03-02", "2026-03-02")]
    [InlineData("at 1,5 % it sagged", "at 1,5 % it sagged")]
    public void A_cell_takes_a_decimal_comma_and_leaves_text_alone(string typed, string cell)
        => Assert.Equal(cell, TypedNumber.AsCell(typed));

    [Theory]
    [InlineData("12 00")]
    [InlineData("1200 000")]
    [InlineData("12 0000")]
    [InlineData("1 2 3")]
    [InlineData(" ")]
    public void What_could_be_two_numbers_is_refused(string text)
    {
        Assert.Null(TypedNumber.Read(text, NumberRange.Viscosity, out var error));
        Assert.StartsWith($"read '{text.Trim()}'", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("12,000", "12.000 or 12000")]
    [InlineData("9,750 mPas", "9.750 or 9750")]
    public void A_viscosity_whose_comma_may_part_thousands_is_asked_about(string text, string said)
    {
        Assert.Null(TypedNumber.Read(text, NumberRange.Viscosity, out var error));
        Assert.Contains(said, error, StringComparison.Ordinal);
    }

    /// <summary>A balance shows thousandths of a gram, and many countries write them behind a comma.</summary>
    [Theory]
    [InlineData("1,250", 1.25)]
    [InlineData("0,005 kg", 5)]
    [InlineData("0.5 oz", 14.1747615625)]
    [InlineData("2 lb", 907.18474)]
    [InlineData("1 gal", 4542.4941408)]
    public void Grams_read_in_every_unit_of_mass_and_by_density_of_volume(string text, double grams)
        => Assert.Equal(grams, TypedNumber.Read(text, NumberRange.Grams, out _, Density.FromGramsPerMilliliter(1.2))!.Value, 1e-9);

    [Fact]
    public void A_unit_where_there_is_none_is_refused()
    {
        Assert.Null(TypedNumber.Read("5 g", new("", 1, 10), out var error));
        Assert.Equal("read the unit 'g', expected a number without a unit", error);
    }

    [Theory]
    [InlineData("92 KU", true)]
    [InlineData("38 s", true)]
    [InlineData("1.2 Pa·s", true)]
    [InlineData("NaN", false)]
    [InlineData("38 m", false)]
    [InlineData("KU", false)]
    public void A_target_is_wrong_where_no_method_would_understand_it(string text, bool isRight)
        => Assert.Equal(isRight, TypedTarget.Wrong(text) is null);
}
