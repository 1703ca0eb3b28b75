using System.Text;
using Viscolog.Cli.Calls;
using Viscolog.Output;

namespace Viscolog.Tests.Output;

/// <summary>What is written piece by piece.</summary>
public sealed class TakerTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(100_000)]
    public void Text_is_given_on_in_whole_characters_and_together_is_all(int piece)
    {
        var text = string.Concat(Enumerable.Range(0, 20_000).Select(i => $"row {i}, 23 °C – ä 🧪\n")) + "end without an end";
        var bytes = Encoding.UTF8.GetBytes(text);
        var given = new List<string>();
        using (var taker = new TextPieces(given.Add))
        {
            for (var i = 0; i < bytes.Length; i += piece)
            {
                taker.Write(bytes, i, Math.Min(piece, bytes.Length - i));
            }
        }

        Assert.Equal(text, string.Concat(given));
        Assert.True(given.Count > 3);
        Assert.All(given, part => Assert.DoesNotContain('\uFFFD', part));
    }

    [Theory]
    [InlineData("a,b\n1,2\n", true)]
    [InlineData("a,b\n1,3\n", false)]
    [InlineData("a,b\n1,2\n\n", false)]
    [InlineData("a,b\n1,2", false)]
    [InlineData("", false)]
    public void A_file_says_the_same_or_not(string there, bool isSame)
    {
        using var other = new MemoryStream(Encoding.UTF8.GetBytes(there));
        using var taker = new SameTaker(other);
        taker.Write("a,b\n"u8);
        taker.Write("1,2\n"u8);
        Assert.Equal(isSame, taker.IsSame);
    }
}
