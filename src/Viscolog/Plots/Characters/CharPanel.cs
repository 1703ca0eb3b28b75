namespace Viscolog.Plots.Characters;

/// <summary>The frame of a panel in characters: the labelled axes, and what is painted between them.</summary>
internal sealed class CharPanel
{
    /// <summary>A label every so many columns.</summary>
    private const int ColumnsPerLabel = 8;

    private readonly Panel _panel;
    private readonly ChartGlyphs _glyphs;

    /// <summary>The label of each row; null where it has none.</summary>
    private readonly string?[] _labels;

    /// <param name="panel">The panel.</param>
    /// <param name="rows">Lines between head and foot.</param>
    /// <param name="glyphs">The characters.</param>
    public CharPanel(Panel panel, int rows, ChartGlyphs glyphs)
    {
        (_panel, _glyphs, _labels) = (panel, glyphs, new string?[rows]);
        foreach (var value in panel.Up.Marks(Math.Max(2, rows / 3)))
        {
            _labels[rows - 1 - panel.Up.Place(value, rows)] ??= glyphs.Number(value);
        }
    }

    /// <summary>Columns up to the axis.</summary>
    public int Margin => _labels.Max(l => l?.Length ?? 0) + 1;

    /// <summary>The rows with the axis up.</summary>
    /// <param name="width">Columns of all.</param>
    /// <param name="margin">Columns up to the axis.</param>
    public IEnumerable<string> Rows(int width, int margin)
    {
        var plane = new CharPlane(new CharGrid(width - margin, _labels.Length, _glyphs.IsPlain), _panel.Across, _panel.Up);
        new CharPainter(_panel, plane, _glyphs).Paint();
        string Edge(string? label) => (label ?? "").PadLeft(margin - 1) + (label is null ? _glyphs.Upright : _glyphs.Tick);
        return _labels.Select((label, i) => Edge(label) + plane.Grid.Row(i));
    }

    /// <summary>The axis across and its labels.</summary>
    public string[] Foot(int width, int margin)
    {
        var (across, columns) = (_panel.Across, width - margin);
        var axis = new CharGrid(columns, 1, plain: true);
        var numbers = new CharGrid(width, 1, plain: true);
        var title = _glyphs.Show(across.Short);
        axis.Write(0, 0, new string(_glyphs.Across, columns));
        var free = 0;
        foreach (var value in across.Marks(columns / ColumnsPerLabel).Order())
        {
            var column = across.Place(value, columns);
            var text = _glyphs.Number(value);
            var from = Math.Max(0, margin + column - (text.Length / 2));
            axis.Put(column, 0, _glyphs.AcrossTick);
            if (from >= free && from + text.Length < width - title.Length)
            {
                numbers.Write(from, 0, text);
                free = from + text.Length + 1;
            }
        }

        numbers.Write(width - title.Length, 0, title);
        return [new string(' ', margin - 1) + _glyphs.Corner + axis.Row(0), numbers.Row(0)];
    }
}
