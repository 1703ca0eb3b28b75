using System.Text;

namespace Viscolog.Tables;

/// <summary>
/// Header lines as spreadsheets write them: in quotes, with separators behind, cut into cells, with the value in a cell of its own. A line
/// that no spreadsheet wrote stays as it is.
/// </summary>
internal static class HeaderCells
{
    private static ReadOnlySpan<byte> Separators => ",;\t"u8;

    /// <summary>The length of the line that a text begins with, without its line break: a cell in quotes may hold some itself.</summary>
    public static int LengthOf(ReadOnlySpan<byte> text)
    {
        var end = text.IndexOfAny((byte)'\r', (byte)'\n');
        end = end < 0 ? text.Length : end;
        for (var at = 0; text[..end].IndexOf((byte)'"') >= 0;)
        {
            var next = at < text.Length && text[at] == '"' ? Behind(text, at) : at + text[at..].IndexOfAny(",;\t\r\n"u8);
            if (next < at || (next < text.Length && !IsBreak(text[next]) && !Separators.Contains(text[next])))
            {
                return end;
            }

            if (next == text.Length || IsBreak(text[next]))
            {
                return next;
            }

            at = next + 1;
        }

        return end;
    }

    /// <summary>The line without what a spreadsheet did to it.</summary>
    /// <param name="line">The line.</param>
    /// <param name="separator">The separator of the file.</param>
    public static string TextOf(string line, char separator)
    {
        var cells = Cells(line, separator);
        while (cells.Count > 1 && string.IsNullOrWhiteSpace(cells[^1]))
        {
            cells.RemoveAt(cells.Count - 1);
        }

        var (first, rest) = (cells[0].Trim(), string.Join(separator, cells.Skip(1)));
        var mark = first.IndexOf(':', StringComparison.Ordinal);
        return cells.Count == 1 ? first
            : mark == first.Length - 1 ? $"{first} {rest.TrimStart()}"
            : mark < 0 && !rest.Contains(':', StringComparison.Ordinal) ? $"{first}: {rest.TrimStart()}"
            : string.Join(separator, cells).Trim();
    }

    /// <summary>
    /// Whether a line with its mark would be read as something else in a comma file where it stands there without quotes.
    /// </summary>
    public static bool IsOtherUnquoted(string line)
        => line.Contains(",\"", StringComparison.Ordinal)
            || line.Contains("\t\"", StringComparison.Ordinal)
            || line.Contains(";\"", StringComparison.Ordinal)
            || TextOf(line, ',') != line.Trim();

    /// <summary>Whether a line is a header line.</summary>
    public static bool Begins(string line) => line.StartsWith('#') || line.StartsWith("\"#", StringComparison.Ordinal);

    /// <summary>Whether nothing stands in a line but separators and empty quotes.</summary>
    public static bool IsBlank(string line) => line.AsSpan().IndexOfAnyExcept(" \t,;\"") < 0;

    // Quotes that are not round a whole cell are part of a text that somebody typed.
    private static List<string> Cells(string line, char separator)
    {
        var (cells, at) = (new List<string>(), 0);
        while (true)
        {
            if (at < line.Length && line[at] == '"')
            {
                var end = at + 1;
                var text = new StringBuilder();
                for (
                    ; end < line.Length && (line[end] != '"' || (end + 1 < line.Length && line[end + 1] == '"')); end += line[end] == '"'
                        ? 2
                        : 1)
                {
                    text.Append(line[end]);
                }

                if (end >= line.Length || (end + 1 < line.Length && line[end + 1] != separator))
                {
                    return [line];
                }

                cells.Add(text.ToString());
                at = end + 1;
            }
            else
            {
                var end = line.IndexOf(separator, at);
                cells.Add(line[at..(end < 0 ? line.Length : end)]);
                at = end < 0 ? line.Length : end;
            }

            if (at >= line.Length)
            {
                return cells;
            }

            at++;
        }
    }

    /// <summary>The place behind the quote that closes; -1 where none does.</summary>
    private static int Behind(ReadOnlySpan<byte> text, int open)
    {
        for (var at = open + 1; ;)
        {
            var quote = text[at..].IndexOf((byte)'"');
            if (quote < 0)
            {
                return -1;
            }

            at += quote + 1;
            if (at >= text.Length || text[at] != '"')
            {
                return at;
            }

            at++;
        }
    }

    private static bool IsBreak(byte one) => one is (byte)'\r' or (byte)'\n';
}
