using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsvHelper;
using Viscolog.Text;

namespace Viscolog.Tables;

/// <summary>A file cut into its header lines and its table.</summary>
/// <param name="Header">The header lines in order.</param>
/// <param name="Table">The header row and all that follows.</param>
/// <param name="TableLine">The line of the header row, from 1; of a sheet its row.</param>
/// <param name="Separator">The separator that the header row uses.</param>
internal sealed record TableLayout(ImmutableArray<HeaderLine> Header, ReadOnlyMemory<byte> Table, int TableLine, char Separator)
{
    /// <summary>How the file writes numbers.</summary>
    public required FileNumbers Numbers { get; init; }

    /// <summary>The row of the sheet of each line of the text, the first at 0; null where the lines are the file's own.</summary>
    private IReadOnlyList<int>? RowOfLine { get; init; }

    /// <summary>The line of the text at which the table begins, from 1.</summary>
    private int FirstLine { get; init; }

    /// <summary>Cuts a file's bytes; null where it is refused.</summary>
    /// <param name="bytes">All of the file.</param>
    /// <param name="findings">What was found so far.</param>
    /// <param name="described">The kind of file and what stands in it, to show where it is empty.</param>
    /// <param name="namesExample">Column names to show where they are missing.</param>
    public static TableLayout? OfFile(ReadOnlyMemory<byte> bytes, Findings findings, string described, string namesExample)
        => TableText.Of(bytes, findings, described) is { } text ? Of(text, findings, namesExample) : null;

    /// <summary>The names of a header row that a reader has read; without empty ones at its end, which spreadsheets leave there.</summary>
    public static ImmutableArray<string> NamesOf(CsvReader reader)
    {
        reader.ReadHeader();
        var names = ImmutableArray.CreateBuilder<string>();
        foreach (var name in reader.Headers)
        {
            names.Add(name.Trim());
        }

        while (names.Count > 1 && names[^1].Length == 0)
        {
            names.RemoveAt(names.Count - 1);
        }

        return names.ToImmutable();
    }

    /// <summary>How many fields a row has, without empty ones beyond the columns, which spreadsheets leave there.</summary>
    public static int FieldsOf(CsvReader reader, int columns)
    {
        var count = reader.FieldCount;
        while (count > columns && string.IsNullOrWhiteSpace(reader.GetString(count - 1)))
        {
            count--;
        }

        return count;
    }

    /// <summary>A reader of the table.</summary>
    /// <param name="onQuotes">Told of quotes that are not as they ought to be.</param>
    public CsvReader Reader(Action<CsvMalformedRecord> onQuotes) => ReaderOf(Table, Separator, onQuotes);

    /// <summary>The line of the file of a line of the table; of a sheet the row.</summary>
    public int LineOf(long line) => LineOf(FirstLine - 1 + (int)line, RowOfLine);

    private static CsvReader ReaderOf(ReadOnlyMemory<byte> table, char separator, Action<CsvMalformedRecord> onQuotes)
        => CsvReader.Create(table, CsvReaderOptions.Default with
        {
            Separator = separator,
            FormatProvider = CultureInfo.InvariantCulture,
            TrackLineNumbers = true,
            TrimWhitespace = true,
            OnMalformedRecord = onQuotes,
        });

    private static int LineOf(int line, IReadOnlyList<int>? rows) => rows is not null && line <= rows.Count ? rows[line - 1] : line;

    private static TableLayout? Of(TableText source, Findings findings, string namesExample)
    {
        var (text, lines, start) = (source.Bytes, new List<(int Line, string Text)>(), 0);
        for (var line = 1; start < text.Length;)
        {
            var rest = text.Span[start..];
            var length = HeaderCells.LengthOf(rest);
            var content = Encoding.UTF8.GetString(rest[..length]).Trim(' ', '\t', '\r', '\n');
            if (!HeaderCells.IsBlank(content))
            {
                if (!HeaderCells.Begins(content) && !(line == 1 && IsSeparatorLine(content)))
                {
                    return Of(source, start, line, lines, findings);
                }

                lines.Add((line, content));
            }

            line += LineBreaks.In(rest[..length]) + 1;
            start = length == rest.Length ? text.Length : start + length + LineBreaks.LengthOf(rest[length..]);
        }

        if (HeaderOf(lines, ',', source, findings) is not null)
        {
            findings.Refuse(new(null, null, "no header row"), $"a row of column names after the header lines, such as {namesExample}");
        }

        return null;
    }

    private static TableLayout? Of(TableText source, int start, int line, List<(int Line, string Text)> lines, Findings findings)
    {
        var table = source.Bytes[start..];
        if (SeparatorOf(table.Span) is not { } separator)
        {
            if (HeaderOf(lines, ',', source, findings) is not null)
            {
                var row = Encoding.UTF8.GetString(table.Span[..HeaderCells.LengthOf(table.Span)]).Trim();
                findings.Refuse(
                    new(LineOf(line, source.RowOfLine), null, OneLine.Quoted(row)),
                    "one separator: commas, or semicolons with decimal commas; a name that contains the other goes in quotes");
            }

            return null;
        }

        return HeaderOf(lines, separator, source, findings) is not { } header ? null
            : new(header, table, LineOf(line, source.RowOfLine), separator)
            {
                Numbers = new(separator, separator != '\t' || DecimalMarks.IsPoint(header, () => ReaderOf(table, separator, _ => { }))),
                FirstLine = line,
                RowOfLine = source.RowOfLine,
            };
    }

    /// <summary>A line by which some spreadsheets know the separator, <c>sep=;</c>; the header row tells it here.</summary>
    private static bool IsSeparatorLine(string content)
        => content.Trim('"') is { Length: >= 4 and <= 5 } line && line.StartsWith("sep=", StringComparison.OrdinalIgnoreCase);

    private static ImmutableArray<HeaderLine>? HeaderOf(
        List<(int Line, string Text)> lines,
        char separator,
        TableText source,
        Findings findings)
    {
        var header = ImmutableArray.CreateBuilder<HeaderLine>();
        foreach (var (line, raw) in lines.Where(l => HeaderCells.Begins(l.Text)))
        {
            // A header text has no way to hold a line break.
            var content = HeaderCells.TextOf(raw, separator).Replace('\r', ' ').Replace('\n', ' ');
            var text = content.TrimStart('#').Length == 0 ? "" : content[1..].Trim();
            if (text.Length == 0)
            {
                continue;
            }

            var place = LineOf(line, source.RowOfLine);
            var mark = text.IndexOf(':', StringComparison.Ordinal);
            var key = mark < 0 ? "" : text[..mark].Trim();
            if (key.Length == 0)
            {
                findings.Refuse(new(place, null, OneLine.Quoted(content)), "a header line '# key: value'");
                return null;
            }

            header.Add(new(place, key, text[(mark + 1)..].Trim()));
        }

        return header.ToImmutable();
    }

    // Marks inside quotes belong to a column's name. Tabs round names that commas or semicolons part are space.
    private static char? SeparatorOf(ReadOnlySpan<byte> table)
    {
        var (quoted, commas, semicolons, tabs) = (false, false, false, false);
        foreach (var b in table)
        {
            quoted ^= b == '"';
            if (!quoted && b is (byte)'\r' or (byte)'\n')
            {
                break;
            }

            commas |= !quoted && b == ',';
            semicolons |= !quoted && b == ';';
            tabs |= !quoted && b == '\t';
        }

        return commas && semicolons ? null : semicolons ? ';' : tabs && !commas ? '\t' : ',';
    }
}

/// <summary>One header line as it stands in the file.</summary>
/// <param name="Line">Its line, from 1; of a sheet its row.</param>
/// <param name="Key">Its key; trimmed, not empty.</param>
/// <param name="Value">Its value; trimmed.</param>
internal sealed record HeaderLine(int Line, string Key, string Value)
{
    /// <summary>Where it stands.</summary>
    public Place Place => new(Line, null, OneLine.Quoted($"{Key}: {Value}"));
}
