using System.Text;

namespace Viscolog.RunFiles;

/// <summary>Tells kinds of file apart by the header key in their first line.</summary>
internal static class FirstKey
{
    /// <summary>Whether the first line with something in it is a header line of that key.</summary>
    /// <param name="bytes">The first bytes of a file.</param>
    /// <param name="key">ASCII; capitals make no difference.</param>
    public static bool Is(ReadOnlySpan<byte> bytes, string key)
    {
        var text = bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
        // Blank lines and '#' alone are passed over, as everywhere before the header row.
        var isHeader = text.TrimStart(" \t\r\n"u8).StartsWith("#"u8);
        text = text.TrimStart("# \t\r\n"u8);
        var mark = text.IndexOfAny(":\r\n"u8);
        return isHeader && mark >= 0 && text[mark] == ':' && Ascii.EqualsIgnoreCase(text[..mark].TrimEnd(" \t"u8), Encoding.ASCII.GetBytes(key));
    }
}
