using System.Text;

namespace Viscolog.Tables;

/// <summary>The header line by which a kind of file is told, which stands alone in it: its key and its version.</summary>
/// <param name="Name">The key; ASCII, capitals make no difference.</param>
/// <param name="Version">The version of the format.</param>
internal sealed record FileKey(string Name, string Version)
{
    /// <summary>The line without its mark.</summary>
    public string Line => $"{Name}: {Version}";

    /// <summary>Whether the first line with something in it has the key.</summary>
    /// <param name="bytes">The first bytes of a file.</param>
    public bool Begins(ReadOnlySpan<byte> bytes)
    {
        var text = bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
        // Blank lines and '#' alone are passed over, as everywhere before the header row.
        var isHeader = text.TrimStart(" \t\r\n,;\""u8).StartsWith("#"u8);
        text = text.TrimStart("# \t\r\n,;\""u8);
        var mark = text.IndexOfAny(":\r\n"u8);
        return isHeader
            && mark >= 0
            && text[mark] == ':'
            && Ascii.EqualsIgnoreCase(text[..mark].TrimEnd(" \t"u8), Encoding.ASCII.GetBytes(Name));
    }

    /// <summary>Refuses header lines other than this one.</summary>
    public void Check(TableLayout layout, Findings findings)
    {
        foreach (var line in layout.Header)
        {
            if (!line.Key.Equals(Name, StringComparison.OrdinalIgnoreCase) || line.Value != Version || line != layout.Header[0])
            {
                findings.Refuse(line.Place, $"the header line '# {Line}' alone");
            }
        }
    }
}
