using CsCheck;
using Viscolog.Text;

namespace Viscolog.Tests.Text;

public sealed class TextTests
{
    [Fact]
    public void A_shortened_text_fits() => Gen.Select(Gen.String, Gen.Int[1, 30]).Sample((text, columns) =>
        Assert.True(PlainText.Columns(PlainText.Shorten(PlainText.Clean(text), columns)) <= columns));

    [Fact]
    public void A_cleaned_text_has_no_control_characters_and_cleaning_twice_changes_nothing() => Gen.String.Sample(text =>
    {
        var clean = PlainText.Clean(text);
        Assert.DoesNotContain(clean, char.IsControl);
        Assert.Equal(clean, PlainText.Clean(clean));
    });

    [Theory]
    [InlineData("too thick", "Too thick.")]
    [InlineData("it is.", "It is.")]
    [InlineData("is it?", "Is it?")]
    [InlineData("", "")]
    public void A_remark_becomes_a_sentence(string remark, string sentence)
        => Assert.Equal(sentence, Sentence.Of(remark));

    [Theory]
    [InlineData("ab\r\ncd\te\u001b[2Jf", "ab cd e [2Jf")]
    [InlineData("plain", "plain")]
    public void One_line_has_no_breaks_and_nothing_that_moves_a_cursor(string text, string line)
        => Assert.Equal(line, OneLine.Of(text));

    [Theory]
    [InlineData("abcd", 4, "abcd")]
    [InlineData("abcde", 4, "abcd…")]
    [InlineData("abc\U0001F9EAd", 4, "abc…")]
    public void A_cut_never_splits_a_letter(string text, int most, string cut)
        => Assert.Equal(cut, OneLine.Cut(text, most));

    [Fact]
    public void Prose_breaks_at_spaces_but_not_before_a_unit()
        => Assert.Equal(
            "it reads|850 mPa·s|(now)   or|thereabouts,|in the pot",
            string.Join('|', Paragraph.Of("it reads 850 mPa·s (now)   or thereabouts, in the pot", 11)));

    [Fact]
    public void A_label_breaks_at_spaces_but_not_before_a_unit()
        => Assert.Equal(
            ["the limit of", "5.00 %: the usual", "range"], Paragraph.Broken("the limit of 5.00 %: the usual range", 17, t => t.Length));

    [Theory]
    [InlineData("", new string[0])]
    [InlineData("a bc  defgh i", new[] { "a", "bc", "def", "gh", "i" })]
    [InlineData("a b cd", new[] { "a b", "cd" })]
    public void A_word_too_wide_is_broken_where_a_place_is_narrow(string text, string[] lines)
        => Assert.Equal(lines, Paragraph.Broken(text, 3, t => t.Length));
}
