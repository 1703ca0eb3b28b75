namespace Viscolog.Tables;

/// <summary>Line breaks: CR, LF and CR LF each count once.</summary>
internal static class LineBreaks
{
    /// <summary>How many there are.</summary>
    public static int In(ReadOnlySpan<byte> text)
    {
        var count = 0;
        for (var at = text.IndexOfAny((byte)'\r', (byte)'\n'); at >= 0; at = text.IndexOfAny((byte)'\r', (byte)'\n'))
        {
            count++;
            text = text[(at + LengthOf(text[at..]))..];
        }

        return count;
    }

    /// <summary>The length of the one that a text begins with.</summary>
    public static int LengthOf(ReadOnlySpan<byte> text) => text.StartsWith("\r\n"u8) ? 2 : 1;
}
