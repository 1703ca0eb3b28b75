namespace Viscolog.Text;

/// <summary>A table in plain text: numbers to the right, texts to the left, columns as wide as they need.</summary>
internal sealed class TextTable(params string[] names)
{
    /// <summary>The last column is never cut narrower than this.</summary>
    private const int LeastLast = 16;

    private readonly List<string[]> _rows = [];

    public void Add(params string[] cells) => _rows.Add([.. cells.Select(c => PlainText.Clean(TerminalText.Of(c)))]);

    /// <summary>Its lines, the names first; columns without content are left out where there are rows.</summary>
    /// <param name="width">Columns of the page: a last column that does not fit is broken into lines; null for no end.</param>
    public IEnumerable<string> Lines(int? width = null)
    {
        var used = Enumerable.Range(0, names.Length).Where(c => _rows.Count == 0 || _rows.Exists(r => r[c].Length > 0)).ToList();
        var widths = used.ConvertAll(c => _rows.Select(r => PlainText.Columns(r[c])).Append(PlainText.Columns(names[c])).Max());
        var toRight = used.ConvertAll(c => _rows.TrueForAll(r => r[c].Length == 0 || char.IsAsciiDigit(r[c][0]) || r[c][0] == '–')
            && !_rows.Exists(r => r[c].Contains('-', StringComparison.Ordinal)));
        var before = widths.Take(widths.Count - 1).Sum(w => w + 2) + 2;
        var room = width is { } most && before + widths[^1] > most && !toRight[^1] ? Math.Max(LeastLast, most - before) : (int?)null;
        return new[] { names }.Concat(_rows).SelectMany(Broken);

        IEnumerable<string> Broken(string[] cells)
        {
            if (room is not { } columns)
            {
                return [Line(cells, cells[used[^1]])];
            }

            var last = Paragraph.Of(cells[used[^1]], columns).ToArray();
            return last.Select((part, i) => i == 0 ? Line(cells, part) : new string(' ', before) + part);
        }

        string Line(string[] cells, string last)
            => ("  "
                + string.Join(
                    "  ",
                    used.Select((
                        c,
                        i) => Padded(i == used.Count - 1
                            ? last
                            : cells[c], i == used.Count - 1 && room is not null
                            ? 0
                            : widths[i], toRight[i])))).TrimEnd();
    }

    private static string Padded(string text, int width, bool toRight)
    {
        var space = new string(' ', Math.Max(0, width - PlainText.Columns(text)));
        return toRight ? space + text : text + space;
    }
}
