using Viscolog.Text;

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
        var title = PlainText.Shorten(_glyphs.Show(across.Short), columns / 2, _glyphs.Ellipsis);
        axis.Write(0, 0, new string(_glyphs.Across, columns));
        var end = width - PlainText.Columns(title);
        foreach (var (column, from, text) in Labels(across, columns, margin, end))
        {
            axis.Put(column, 0, _glyphs.AcrossTick);
            if (text.Length > 0)
            {
                numbers.Write(from, 0, text);
            }
        }

        numbers.Write(end, 0, title);
        return [new string(' ', margin - 1) + _glyphs.Corner + axis.Row(0), numbers.Row(0)];
    }

    /// <summary>The labels with the columns where they begin; of names every second, third and so on where they would touch.</summary>
    private List<(int Column, int From, string Text)> Labels(Axis across, int columns, int margin, int end)
    {
        var all = across.Marks(columns / ColumnsPerLabel).Order().Select(v =>
        {
            var text = across.Names.IsEmpty ? _glyphs.Number(v) : _glyphs.Show(across.Names[(int)v - 1]);
            var column = across.Place(v, columns);
            return (Column: column, From: Math.Max(0, margin + column - (PlainText.Columns(text) / 2)), Text: text);
        }).ToList();
        if (across.Names.IsEmpty)
        {
            return Apart(all, end);
        }

        for (var step = 1; step < all.Count; step++)
        {
            var some = all.Where((_, i) => i % step == 0).ToList();
            if (some.Zip(some.Skip(1)).All(p => p.First.From + PlainText.Columns(p.First.Text) < p.Second.From))
            {
                return Apart(some, end);
            }
        }

        return Apart([.. all.Take(1)], end);
    }

    /// <summary>A label that would touch the one before, or the title, keeps its tick alone.</summary>
    private static List<(int Column, int From, string Text)> Apart(List<(int Column, int From, string Text)> labels, int end)
    {
        var free = 0;
        return [.. labels.Select(l =>
        {
            var after = l.From + PlainText.Columns(l.Text);
            if (l.From < free || after >= end)
            {
                return l with { Text = "" };
            }

            free = after + 1;
            return l;
        })];
    }
}
