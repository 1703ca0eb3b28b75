using Viscolog.Tables;
using Viscolog.Tui.Typing;

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
}
