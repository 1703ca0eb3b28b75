using System.Text.Json;
using CsCheck;
using Viscolog.Text;

namespace Viscolog.Tests.Text;

public sealed class TerminalTextTests
{
    /// <summary>Letters, and all that a terminal must not be given.</summary>
    private static readonly Gen<string> Texts = Gen.OneOf(
        Gen.Char['a', 'z'],
        Gen.Char,
        Gen.Char['\0', '\u009f'],
        Gen.Char['\u2000', '\u206f'])
        .Array[0, 40].Select(c => new string(c));

    [Theory]
    [InlineData("ab\r\ncd\te\e[2Jf", "ab cd e<U+001B>[2Jf")]
    [InlineData("a\u202eb\ufeffc\u009bd\U000E0041", "a<U+202E>b<U+FEFF>c<U+009B>d<U+E0041>")]
    [InlineData("850 mPa·s, 23 °C, 雨 ❤️ é", "850 mPa·s, 23 °C, 雨 ❤️ é")]
    [InlineData("1\u2009000", "1\u2009000")]
    public void What_a_terminal_must_not_have_is_named(string text, string shown) => Assert.Equal(shown, TerminalText.Of(text));

    [Fact]
    public void What_is_shown_shows_and_naming_twice_changes_nothing() => Texts.Sample(text =>
    {
        var shown = TerminalText.Of(text);
        Assert.All(shown.EnumerateRunes(), r => Assert.True(PlainText.Shows(r)));
        Assert.Equal(shown, TerminalText.Of(shown));
    });

    [Fact]
    public void JSON_says_the_same_whatever_is_escaped() => Gen.Select(Texts, Gen.Bool).Sample((text, ascii) =>
    {
        var json = JsonSerializer.Serialize(text);
        var said = JsonSerializer.Deserialize<string>(json);
        var shown = TerminalText.Json(json, ascii);
        Assert.Equal(said, JsonSerializer.Deserialize<string>(shown));
        Assert.All(shown.EnumerateRunes(), r => Assert.True(ascii ? r.IsAscii : PlainText.Shows(r)));
    });

    /// <summary>However a text is cut into pieces, nothing gets past the writer but what the program itself says.</summary>
    [Fact]
    public void A_writer_lets_nothing_through() => Gen.Select(Texts, Gen.Int[0, 2]).Sample((text, how) =>
    {
        using var inner = new StringWriter();
        using var writer = new TerminalWriter(inner);
        writer.Signal("\e[1m");
        switch (how)
        {
            case 0:
                writer.Write(text);
                break;
            case 1:
                writer.WriteLine(text.ToCharArray());
                break;
            default:
                foreach (var c in text)
                {
                    writer.Write(c);
                }

                break;
        }

        var written = inner.ToString();
        Assert.StartsWith("\e[1m", written, StringComparison.Ordinal);
        Assert.All(
            written[4..].EnumerateRunes(),
            r => Assert.True(r.Value is '\n' or '\t' || PlainText.Shows(r) || r == System.Text.Rune.ReplacementChar));
    });

    [Fact]
    public void A_letter_of_two_halves_comes_through_in_two_pieces()
    {
        using var inner = new StringWriter();
        using var writer = new TerminalWriter(inner);
        writer.Write('\ud83e');
        writer.Write('\uddea');
        Assert.Equal("\U0001F9EA", inner.ToString());
    }
}
