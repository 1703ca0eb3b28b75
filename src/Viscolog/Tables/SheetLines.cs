using System.Buffers;
using System.Text;
using Viscolog.Sheets;

namespace Viscolog.Tables;

/// <summary>Rows of a sheet as the text of a comma file, in which each line knows its row.</summary>
internal static class SheetLines
{
    private static readonly SearchValues<char> Marks = SearchValues.Create(",;\t\"\r\n");

    /// <summary>The text, cut behind so many bytes, and the row of the sheet of each of its lines.</summary>
    public static (byte[] Utf8, List<int> RowOfLine) Of(IReadOnlyList<SheetRow> rows, int most)
    {
        using var stream = new MemoryStream();
        var lines = new List<int>();
        var isTable = false;
        foreach (var row in rows)
        {
            // A row of the table may begin with a text that looks like a header line.
            var line = Encoding.UTF8.GetBytes(
                string.Join(',', row.Cells.Select((c, i) => Cell(c, isTable && i == 0 && c.StartsWith('#')))) + "\n");
            isTable |= !row.Cells[0].StartsWith('#');
            if (stream.Length + line.Length > most)
            {
                stream.Write(line, 0, (int)(most - stream.Length));
                break;
            }

            stream.Write(line);
            lines.AddRange(Enumerable.Repeat(row.Number, LineBreaks.In(line)));
        }

        return (stream.ToArray(), lines);
    }

    private static string Cell(string text, bool isQuoted)
        => isQuoted || text.AsSpan().ContainsAny(Marks) || text.Length != text.AsSpan().Trim().Length
            ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : text;
}
