using Viscolog.Text;

namespace Viscolog.Plots.Characters;

/// <summary>Paints the inside of a panel in characters, from the back to the front.</summary>
internal sealed class CharPainter(Panel panel, CharPlane plane, ChartGlyphs glyphs)
{
    /// <summary>A region narrower than this cannot hold words; its reason then stands in the legend alone.</summary>
    private const int LeastWordColumns = 10;

    private readonly CharGrid _grid = plane.Grid;

    /// <summary>Cells that show a settled value.</summary>
    private readonly HashSet<(int Column, int Row)> _settled = [];

    public void Paint()
    {
        foreach (var limit in panel.Elements.OfType<Element.Limit>())
        {
            Shade(limit);
        }

        foreach (var target in panel.Elements.OfType<Element.Target>())
        {
            plane.Level(target.High, glyphs.Target);
            plane.Level(target.Low, glyphs.Target);
        }

        // The first level lies on top.
        foreach (var level in panel.Elements.OfType<Element.Level>().Where(l => l.Meaning != Meaning.Zone).Reverse())
        {
            plane.Level(level.Y, glyphs.Sign(level.Meaning)[0]);
        }

        foreach (var element in panel.Elements)
        {
            Curve(element);
        }

        Region();
        Words();
        foreach (var element in panel.Elements)
        {
            Front(element);
        }

        if (panel.Nothing is { } nothing)
        {
            plane.Middle(nothing);
        }
    }

    private void Shade(Element.Limit limit)
    {
        for (var column = plane.Column(limit.From); column < _grid.Columns; column++)
        {
            for (var row = 0; row < _grid.Rows; row++)
            {
                _grid.Put(column, row, glyphs.Limit);
            }
        }
    }

    /// <summary>Bands of several runs would hide each other.</summary>
    private void Curve(Element element)
    {
        switch (element)
        {
            case Element.Area { Meaning: Meaning.Band, Of: null } area:
                plane.Trace([.. area.Spans.Select(s => new Spot(s.X, s.Low))], '.', 2);
                plane.Trace([.. area.Spans.Select(s => new Spot(s.X, s.High))], '.', 2);
                break;
            case Element.Line { Meaning: Meaning.Median } line:
                plane.Trace(line.Points, '*');
                break;
            case Element.Line { Meaning: Meaning.Way } line:
                plane.Trace(line.Points, '.');
                break;
        }
    }

    private void Words()
    {
        if (panel.Elements.OfType<Element.Target>().FirstOrDefault() is { Word: { } word } target)
        {
            _grid.Write(1, plane.Row(target.High), $" {word} ");
        }

        if (panel.Elements.OfType<Element.Limit>().FirstOrDefault() is not { Word: { } why } limit)
        {
            return;
        }

        var from = plane.Column(limit.From) + 1;
        var room = _grid.Columns - from - 1;
        var lines = room < LeastWordColumns ? [] : Paragraph.Broken(glyphs.Show(why), room, t => PlainText.Columns(t));
        lines = lines.Count > _grid.Rows / 2 ? [] : lines;
        lines = lines.Count == 0 && room >= "limit".Length ? ["limit"] : lines;
        for (var i = 0; i < lines.Count; i++)
        {
            _grid.Write(from, _grid.Rows - lines.Count + i, lines[i]);
        }
    }

    private void Front(Element element)
    {
        switch (element)
        {
            case Element.Arrow arrow:
                Arrow(arrow);
                break;
            case Element.Marks marks:
                Marks(marks);
                break;
            case Element.Ends ends:
                Ends(ends);
                break;
        }
    }

    private void Arrow(Element.Arrow arrow)
    {
        var (from, to) = (plane.Column(arrow.From.X), plane.Column(arrow.To.X));
        var (start, end) = (plane.Row(arrow.From.Y), plane.Row(arrow.To.Y));
        if (arrow.Interval is { } interval)
        {
            for (var row = Math.Max(0, plane.Row(interval.High)); row <= Math.Min(_grid.Rows - 1, plane.Row(interval.Low)); row++)
            {
                _grid.Put(to, row, glyphs.Interval);
            }

            for (var column = from + 1; column < to; column++)
            {
                var part = (column - from) / (double)(to - from);
                _grid.Put(column, (int)Math.Round(start + (part * (end - start))), glyphs.Path);
            }
        }

        _grid.Put(to, end, glyphs.Next);
    }

    /// <summary>A letter for each of several runs: a small one, or a capital where settled values have the small ones.</summary>
    private void Marks(Element.Marks marks)
    {
        var both = panel.Elements.Any(e => e is Element.Marks { Meaning: Meaning.Settled });
        var sign = (marks.Meaning, marks.Of) switch
        {
            (Meaning.Reading, { } i) => ChartGlyphs.Letter(i % 26, both ? 'A' : i < 26 ? 'a' : 'A'),
            (Meaning.Settled, { } i) => ChartGlyphs.Letter(i % 26),
            _ => glyphs.Sign(marks.Meaning)[0],
        };
        foreach (var (x, y) in marks.Points)
        {
            var (column, row) = (plane.Column(x), plane.Row(y));
            var shared = marks is { Meaning: Meaning.Reading, Of: null } && _settled.Contains((column, row));
            _grid.Put(column, row, shared ? glyphs.Both : sign);
            if (marks.Meaning == Meaning.Settled)
            {
                _settled.Add((column, row));
            }
        }
    }

    /// <summary>At the right edge, each with the letter of its trace.</summary>
    private void Ends(Element.Ends ends)
    {
        foreach (var (i, (at, _)) in ends.Traces.Index())
        {
            _grid.Put(_grid.Columns - 1, plane.Row(at.Y), ChartGlyphs.Letter(i));
            _grid.Put(_grid.Columns - 2, plane.Row(at.Y), glyphs.Settled);
        }
    }

    /// <summary>A map: each cell says which values are in band, and contours have their numbers where they meet the floor.</summary>
    private void Region()
    {
        var bands = panel.Elements.OfType<Element.InBand>().ToArray();
        var contours = panel.Elements.OfType<Element.Contours>().FirstOrDefault();
        if (contours is null)
        {
            return;
        }

        for (var row = 0; row < _grid.Rows; row++)
        {
            for (var column = 0; column < _grid.Columns; column++)
            {
                var held = Array.FindAll(bands, b => b.Holds(X(column), Y(row)));
                if (held.Length > 1)
                {
                    _grid.Put(column, row, ChartGlyphs.InAllBands);
                }
                else if (held.Length == 1)
                {
                    _grid.Put(column, row, glyphs.Sign(held[0].Meaning)[0]);
                }
                else if (IsContour(contours, column, row))
                {
                    _grid.Put(column, row, glyphs.Sign(contours.Meaning)[0]);
                }
            }
        }

        foreach (var level in contours.Levels)
        {
            Number(contours, level);
        }
    }

    private double X(int column) => plane.Across.At(column, _grid.Columns);

    private double Y(int row) => row < _grid.Rows ? plane.Up.At(_grid.Rows - 1 - row, _grid.Rows) : 0;

    /// <summary>Whether a level lies between a cell and the next to the right or below.</summary>
    private bool IsContour(Element.Contours contours, int column, int row)
    {
        var here = contours.Field.At(X(column), Y(row));
        var (beside, under) = (contours.Field.At(X(column + 1), Y(row)), contours.Field.At(X(column), Y(row + 1)));
        return contours.Levels.Any(l => (here < l) != (beside < l) || (here < l) != (under < l));
    }

    private void Number(Element.Contours contours, double level)
    {
        for (var column = 0; column + 1 < _grid.Columns; column++)
        {
            if (contours.Field.At(X(column), 0) < level && contours.Field.At(X(column + 1), 0) >= level)
            {
                var text = glyphs.Number(level);
                if (column + 1 + text.Length <= _grid.Columns)
                {
                    _grid.Write(column + 1, _grid.Rows - 1, text);
                }

                return;
            }
        }
    }
}
