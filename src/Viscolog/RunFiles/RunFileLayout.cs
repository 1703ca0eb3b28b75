using System.Collections.Immutable;
using System.Text;
using Viscolog.Text;

namespace Viscolog.RunFiles;

/// <summary>A run file cut into its header lines and its table.</summary>
/// <param name="Header">The header lines in order.</param>
/// <param name="Table">The header row and all that follows.</param>
/// <param name="TableLine">The line of the header row, from 1.</param>
/// <param name="Separator">The separator that the header row uses.</param>
internal sealed record RunFileLayout(ImmutableArray<HeaderLine> Header, ReadOnlyMemory<byte> Table, int TableLine, char Separator)
{
    /// <summary>Cuts the text (UTF-8, without byte order mark); null where the file is refused.</summary>
    /// <param name="text">All of it.</param>
    /// <param name="findings">What was found so far.</param>
    /// <param name="namesExample">Column names to show where they are missing.</param>
    public static RunFileLayout? Of(ReadOnlyMemory<byte> text, Findings findings, string namesExample = NamesExample)
    {
        var header = ImmutableArray.CreateBuilder<HeaderLine>();
        var start = 0;
        for (var line = 1; start < text.Length; line++)
        {
            var rest = text.Span[start..];
            var length = rest.IndexOfAny((byte)'\r', (byte)'\n');
            var content = Encoding.UTF8.GetString(length < 0 ? rest : rest[..length]).Trim();
            if (content.Length > 0 && content[0] != '#')
            {
                return SeparatorOf(rest, line, content, findings) is { } separator ? new(header.ToImmutable(), text[start..], line, separator) : null;
            }

            if (!TakeLine(content, line, header, findings))
            {
                return null;
            }

            start = length < 0 ? text.Length : start + length + BreakLength(rest[length..]);
        }

        findings.Refuse(new(null, null, "no header row"), $"a row of column names after the header lines, such as {namesExample}");
        return null;
    }

    /// <summary>Column names to show where they are missing.</summary>
    public const string NamesExample = "'thickener,added_g,stir_s,wait_s,viscosity_mpas'";

    /// <summary>The number of line breaks; CR, LF and CR LF each count once.</summary>
    public static int LineBreaks(ReadOnlySpan<byte> text)
    {
        var count = 0;
        for (var at = text.IndexOfAny((byte)'\r', (byte)'\n'); at >= 0; at = text.IndexOfAny((byte)'\r', (byte)'\n'))
        {
            count++;
            text = text[(at + BreakLength(text[at..]))..];
        }

        return count;
    }

    private static int BreakLength(ReadOnlySpan<byte> text) => text.StartsWith("\r\n"u8) ? 2 : 1;

    private static bool TakeLine(string content, int line, ImmutableArray<HeaderLine>.Builder header, Findings findings)
    {
        var text = content.TrimStart('#').Length == 0 ? "" : content[1..].Trim();
        if (text.Length == 0)
        {
            return true;
        }

        var mark = text.IndexOf(':', StringComparison.Ordinal);
        var key = mark < 0 ? "" : text[..mark].Trim();
        if (key.Length == 0)
        {
            findings.Refuse(new(line, null, OneLine.Quoted(content)), "a header line '# key: value'");
            return false;
        }

        header.Add(new(line, key, text[(mark + 1)..].Trim()));
        return true;
    }

    // Marks inside quotes belong to a column's name.
    private static char? SeparatorOf(ReadOnlySpan<byte> table, int line, string row, Findings findings)
    {
        var (quoted, commas, semicolons) = (false, false, false);
        foreach (var b in table)
        {
            quoted ^= b == '"';
            if (!quoted && b is (byte)'\r' or (byte)'\n')
            {
                break;
            }

            commas |= !quoted && b == ',';
            semicolons |= !quoted && b == ';';
        }

        if (commas && semicolons)
        {
            findings.Refuse(new(line, null, OneLine.Quoted(row)), "one separator: commas, or semicolons with decimal commas; a name that holds the other goes into quotes");
            return null;
        }

        return semicolons ? ';' : ',';
    }
}
