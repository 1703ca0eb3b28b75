using System.Text.Encodings.Web;
using System.Text.Json;

namespace Viscolog.Tables;

/// <summary>How much a row or a header may hold: what the log has room for on one line of its journal.</summary>
internal static class RowLength
{
    /// <summary>The most bytes; a little less than a line of the journal has room for.</summary>
    public const int Most = (1 << 20) - 4096;

    // A character takes no more than so many bytes in JSON.
    private const int WidestCharacter = 6;
    private const int Between = 4;

    /// <summary>What is said to be expected.</summary>
    public static string Expected(string what)
        => FormattableString.Invariant($"{what} of no more than {Most} bytes together; shorten the texts");

    /// <summary>Refuses texts that stand in one record of the log where they are too long together; the longest is named.</summary>
    /// <param name="texts">The texts, each with its line and, of a cell, its column.</param>
    /// <param name="what">What they are, such as "a row".</param>
    /// <param name="findings">What was found so far.</param>
    public static void Check(IReadOnlyCollection<(int Line, string? Column, string Text)> texts, string what, Findings findings)
    {
        if (texts.Sum(t => ((long)t.Text.Length * WidestCharacter) + Between) <= Most)
        {
            return;
        }

        var lengths = texts.Select(t => (t.Line, t.Column, Length: LengthOf(t.Text) + Between)).ToList();
        if (lengths.Sum(l => (long)l.Length) is > Most and var all)
        {
            var (line, column, length) = lengths.MaxBy(l => l.Length);
            var beside = all == length ? "" : FormattableString.Invariant($" of {all} in all");
            findings.Refuse(new(line, column, FormattableString.Invariant($"{length} bytes{beside}")), Expected(what));
        }
    }

    private static int LengthOf(string text)
        => JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping).EncodedUtf8Bytes.Length;
}
