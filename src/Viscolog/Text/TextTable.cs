namespace Viscolog.Text;

/// <summary>A table in plain text: numbers to the right, texts to the left, columns as wide as they need.</summary>
internal sealed class TextTable(params string[] names)
{
    private readonly List<string[]> _rows = [];
    private readonly TextColumns _columns = new(names);

    public void Add(params string[] cells)
    {
        string[] clean = [.. cells.Select(Clean)];
        _columns.Measure(clean);
        _rows.Add(clean);
    }

    /// <summary>Its lines, the names first; columns without content are left out where there are rows.</summary>
    /// <param name="width">Columns of the page: a last column that does not fit is broken into lines; null for no end.</param>
    public IEnumerable<string> Lines(int? width = null) => _rows.Prepend(names).SelectMany(r => _columns.Lines(r, width));

    /// <summary>A cell as it is shown.</summary>
    public static string Clean(string cell) => PlainText.Clean(TerminalText.Of(cell));
}

/// <summary>The columns of a table: how wide they are and which hold numbers, known once all rows were measured. No row is kept.</summary>
internal sealed class TextColumns(string[] names)
{
    /// <summary>The last column is never cut narrower than this.</summary>
    private const int LeastLast = 16;

    private readonly int[] _widths = [.. names.Select(PlainText.Columns)];
    private readonly bool[] _isUsed = new bool[names.Length];
    private bool _hasRows;
    private readonly bool[] _isText = new bool[names.Length];

    /// <summary>Looks at a row's cells, which are clean.</summary>
    public void Measure(string[] cells)
    {
        _hasRows = true;
        for (var c = 0; c < names.Length; c++)
        {
            var cell = cells[c];
            if (cell.Length == 0)
            {
                continue;
            }

            _isUsed[c] = true;
            _widths[c] = Math.Max(_widths[c], PlainText.Columns(cell));
            _isText[c] |= !(char.IsAsciiDigit(cell[0]) || cell[0] == '–') || cell.Contains('-', StringComparison.Ordinal);
        }
    }

    /// <summary>A row's lines; columns without content are left out.</summary>
    /// <param name="cells">Its cells, clean.</param>
    /// <param name="width">Columns of the page: a last column that does not fit is broken into lines; null for no end.</param>
    public IEnumerable<string> Lines(string[] cells, int? width = null)
    {
        int[] used = [.. Enumerable.Range(0, names.Length).Where(c => _isUsed[c] || !_hasRows)];
        if (used.Length == 0)
        {
            return [""];
        }

        var (last, before) = (used[^1], used[..^1].Sum(c => _widths[c] + 2) + 2);
        if (width is not { } most || before + _widths[last] <= most || !_isText[last])
        {
            return [Line(used.Select(c => Padded(cells[c], c)))];
        }

        var parts = Paragraph.Of(cells[last], Math.Max(LeastLast, most - before));
        return parts.Select(
            (part, i) => i == 0 ? Line([.. used[..^1].Select(c => Padded(cells[c], c)), part]) : new string(' ', before) + part);
    }

    private static string Line(IEnumerable<string> cells) => ("  " + string.Join("  ", cells)).TrimEnd();

    private string Padded(string text, int column)
    {
        var space = new string(' ', Math.Max(0, _widths[column] - PlainText.Columns(text)));
        return _isText[column] ? text + space : space + text;
    }
}
