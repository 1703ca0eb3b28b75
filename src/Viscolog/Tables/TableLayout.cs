using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Unicode;
using CsvHelper;
using Viscolog.Text;

namespace Viscolog.Tables;

/// <summary>A file cut into its header lines and its table.</summary>
/// <param name="Header">The header lines in order.</param>
/// <param name="Table">The header row and all that follows.</param>
/// <param name="TableLine">The line of the header row, from 1.</param>
/// <param name="Separator">The separator that the header row uses.</param>
internal sealed record TableLayout(ImmutableArray<HeaderLine> Header, ReadOnlyMemory<byte> Table, int TableLine, char Separator)
{
    /// <summary>What a file's text has to be.</summary>
    public const string Utf8Expected = "text in UTF-8; save the file again as CSV in UTF-8";

    /// <summary>Cuts a file's bytes; null where it is refused.</summary>
    /// <param name="bytes">All of the file.</param>
    /// <param name="findings">What was found so far.</param>
    /// <param name="described">The kind of file and what stands in it, to show where it is empty.</param>
    /// <param name="namesExample">Column names to show where they are missing.</param>
    public static TableLayout? OfFile(ReadOnlyMemory<byte> bytes, Findings findings, string described, string namesExample)
        => CheckedText(bytes, findings, described) is { } text ? Of(text, findings, namesExample) : null;

    /// <summary>The names of a header row that a reader has read.</summary>
    public static ImmutableArray<string> NamesOf(CsvReader reader)
    {
        reader.ReadHeader();
        var names = ImmutableArray.CreateBuilder<string>();
        foreach (var name in reader.Headers)
        {
            names.Add(name.Trim());
        }

        return names.ToImmutable();
    }

    /// <summary>A reader of the table.</summary>
    /// <param name="onQuotes">Told of quotes that are not as they ought to be.</param>
    public CsvReader Reader(Action<CsvMalformedRecord> onQuotes) => CsvReader.Create(Table, CsvReaderOptions.Default with
    {
        Separator = Separator,
        FormatProvider = CultureInfo.InvariantCulture,
        TrackLineNumbers = true,
        TrimWhitespace = true,
        OnMalformedRecord = onQuotes,
    });

    /// <summary>The line of the file of a line of the table.</summary>
    public int LineOf(long line) => TableLine - 1 + (int)line;

    /// <summary>Cuts the text (UTF-8, without byte order mark); null where the file is refused.</summary>
    /// <param name="text">All of it.</param>
    /// <param name="findings">What was found so far.</param>
    /// <param name="namesExample">Column names to show where they are missing.</param>
    public static TableLayout? Of(ReadOnlyMemory<byte> text, Findings findings, string namesExample)
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

    // CR, LF and CR LF each count once.
    private static int LineBreaks(ReadOnlySpan<byte> text)
    {
        var count = 0;
        for (var at = text.IndexOfAny((byte)'\r', (byte)'\n'); at >= 0; at = text.IndexOfAny((byte)'\r', (byte)'\n'))
        {
            count++;
            text = text[(at + BreakLength(text[at..]))..];
        }

        return count;
    }

    private static ReadOnlyMemory<byte>? CheckedText(ReadOnlyMemory<byte> bytes, Findings findings, string described)
    {
        var text = bytes.Span.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
        CheckText(text.Span, findings, described);
        return findings.Well ? text : null;
    }

    private static void CheckText(ReadOnlySpan<byte> text, Findings findings, string described)
    {
        var bad = Utf8.IsValid(text) ? text.IndexOf((byte)0) : FirstInvalid(text);
        if (text.IsEmpty)
        {
            findings.Refuse(new(null, null, "an empty file"), described);
        }
        else if (bad >= 0)
        {
            var line = 1 + LineBreaks(text[..bad]);
            findings.Refuse(new(line, null, FormattableString.Invariant($"byte 0x{text[bad]:X2}")), Utf8Expected);
        }
    }

    private static int FirstInvalid(ReadOnlySpan<byte> text)
    {
        var at = 0;
        while (at < text.Length && Rune.DecodeFromUtf8(text[at..], out _, out var length) == System.Buffers.OperationStatus.Done)
        {
            at += length;
        }

        return at;
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

/// <summary>One header line as it stands in the file.</summary>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Key">Its key; trimmed, not empty.</param>
/// <param name="Value">Its value; trimmed.</param>
internal sealed record HeaderLine(int Line, string Key, string Value)
{
    /// <summary>Where it stands.</summary>
    public Place Place => new(Line, null, OneLine.Quoted($"{Key}: {Value}"));
}
