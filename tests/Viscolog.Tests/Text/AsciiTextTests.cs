using Viscolog.Text;

namespace Viscolog.Tests.Text;

public sealed class AsciiTextTests
{
    [Theory]
    [InlineData("Käse à l'Été", "Kaese a l'Ete")]
    [InlineData("„Öl“ größer, Łódź, Şişli, ñ", "\"Oel\" groesser, Lodz, Sisli, n")]
    [InlineData("23.0 °C, 5 ± 1 mPa·s", "23.0 deg C, 5 +/- 1 mPa.s")]
    [InlineData("“so” − ‘so’ – 漆", "\"so\" - 'so' - ?")]
    [InlineData("e\u0301", "e")]
    public void Letters_lose_their_accents_and_signs_are_spelled(string text, string ascii) => Assert.Equal(ascii, AsciiText.Of(text));

    [Fact]
    public void Half_a_character_is_a_question_mark() => Assert.Equal("a?b", AsciiText.Of("a" + '\uD800' + "b"));
}
