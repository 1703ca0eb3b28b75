using Viscolog.Text;

namespace Viscolog.Plots.Characters;

/// <summary>Paints the inside of a panel in characters, from the back to the front.</summary>
internal sealed class CharPainter(Panel panel, CharPlane plane, ChartGlyphs glyphs)
{
    /// <summary>A region narrower than this cannot hold words; its reason then stands in the legend alone.</summary>
    private const int LeastWordColumns = 10;

    /// <summary>Columns after which levels that share a row take turns.</summary>
    private const int TurnColumns = 3;

    /// <summary>Cells of the longest arrow.</summary>
    private const int MostSteps = 1000;

    /// <summary>Dots drawn between the gaps of the lines of several runs; 0 for a solid line.</summary>
    private static readonly int[] Dashes = [0, 9, 3, 18, 6];

    private readonly CharGrid _grid = plane.Grid;

    /// <summary>Cells that show a settled value.</summary>
    private readonly HashSet<(int Column, int Row)> _settled = [];

    /// <summary>Cells of marks, arrows and words: no words may cover them.</summary>
    private readonly HashSet<(int Column, int Row)> _taken = [];

    public void Paint()
    {
        Take();
        foreach (var limit in panel.Elements.OfType<Element.Limit>())
        {
            Shade(limit);
        }

        foreach (var target in panel.Elements.OfType<Element.Target>())
        {
            plane.Level(target.High, glyphs.Target);
            plane.Level(target.Low, glyphs.Target);
        }

        Levels();
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
            plane.Middle(glyphs.Show(nothing));
        }
    }

    /// <summary>Takes the cells that nothing may be written over.</summary>
    private void Take()
    {
        foreach (var element in panel.Elements)
        {
            _taken.UnionWith(element switch
            {
                Element.Marks marks => marks.Points.Select(p => (plane.Column(p.X), plane.Row(p.Y))),
                Element.Arrow arrow => [.. Shaft(arrow), (plane.Column(arrow.To.X), plane.Row(arrow.To.Y))],
                _ => [],
            });
        }
    }

    /// <summary>Levels that share a row take turns in it.</summary>
    private void Levels()
    {
        foreach (var row in panel.Elements.OfType<Element.Level>().Where(l => l.Meaning != Meaning.Zone).GroupBy(l => plane.Row(l.Y)))
        {
            char[] marks = [.. row.Select(l => glyphs.Sign(l.Meaning)[0]).Distinct()];
            for (var column = 0; column < _grid.Columns; column++)
            {
                _grid.Put(column, row.Key, marks[column / TurnColumns % marks.Length]);
            }
        }
    }

    private void Shade(Element.Limit limit)
    {
        var from = plane.Column(limit.From);
        for (var column = from; column < (limit.IsShaded ? _grid.Columns : from + 1); column++)
        {
            for (var row = 0; row < _grid.Rows; row++)
            {
                _grid.Put(column, row, limit.IsShaded ? glyphs.Limit : glyphs.OtherLimit);
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
                plane.Trace(line.Points, '*', dash: line.Of is { } run ? Dashes[run % Dashes.Length] : 0);
                break;
            case Element.Line { Meaning: Meaning.Way } line:
                plane.Trace(line.Points, '.');
                break;
        }
    }

    private void Words()
    {
        foreach (var target in panel.Elements.OfType<Element.Target>())
        {
            // On the edge, as far left as marks and other words leave room.
            _ = target.Word is { } word
                && Enumerable.Range(1, _grid.Columns).Any(c => Write([$" {glyphs.Show(word)} "], c, plane.Row(target.High)));
        }

        // Each of several curves has the letter of its run at its end, or as near to it as there is room.
        foreach (var line in panel.Elements.OfType<Element.Line>().Where(l => l is { Meaning: Meaning.Median, Of: not null }))
        {
            _ = line.Points.Reverse().Any(p => Write([RunFrame.Letter(line.Of!.Value, 'A').ToString()], plane.Column(p.X), plane.Row(p.Y)));
        }

        foreach (var limit in panel.Elements.OfType<Element.Limit>())
        {
            Reason(limit);
        }
    }

    private void Reason(Element.Limit limit)
    {
        if (limit.Word is not { } why)
        {
            return;
        }

        if (!limit.IsShaded)
        {
            _ = Enumerable.Range(0, _grid.Rows).Any(r => Write([why], plane.Column(limit.From), r));
            return;
        }

        var from = plane.Column(limit.From) + 1;
        var room = _grid.Columns - from - 1;
        var lines = room < LeastWordColumns ? [] : Paragraph.Broken(glyphs.Show(why), room, t => PlainText.Columns(t));
        var brief = glyphs.Show(Say("limit"));
        string[][] ways = [lines.Count > _grid.Rows / 2 ? [] : [.. lines], room >= brief.Length ? [brief] : []];
        foreach (var way in ways.Where(w => w.Length > 0))
        {
            // As low as there is room: a rising curve leaves it there.
            if (Enumerable.Range(0, _grid.Rows - way.Length + 1).Reverse().Any(r => Write(way, from, r)))
            {
                return;
            }
        }
    }

    /// <summary>Writes lines where they cover no mark and no other words and fit; says whether they do.</summary>
    private bool Write(string[] lines, int column, int row)
    {
        (int Column, int Row)[] cells =
            [.. lines.SelectMany((l, i) => Enumerable.Range(column, PlainText.Columns(l)).Select(c => (c, row + i)))];
        if (Array.Exists(cells, c => c.Column < 0 || c.Column >= _grid.Columns || c.Row < 0 || c.Row >= _grid.Rows || _taken.Contains(c)))
        {
            return false;
        }

        _taken.UnionWith(cells);
        for (var i = 0; i < lines.Length; i++)
        {
            _grid.Write(column, row + i, lines[i]);
        }

        return true;
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
        var (to, end) = (plane.Column(arrow.To.X), plane.Row(arrow.To.Y));
        if (arrow.Interval is { } interval)
        {
            for (var row = Math.Max(0, plane.Row(interval.High)); row <= Math.Min(_grid.Rows - 1, plane.Row(interval.Low)); row++)
            {
                _grid.Put(to, row, glyphs.Interval);
            }
        }

        var shaft = Shaft(arrow);
        foreach (var (column, row) in shaft)
        {
            _grid.Put(column, row, glyphs.Path);
        }

        // A mark where the arrow ends would cover its head, which then stands before it.
        var isMarked = panel.Elements.OfType<Element.Marks>().Any(m => m.Points.Any(p => plane.Column(p.X) == to && plane.Row(p.Y) == end));
        var head = isMarked && shaft.Count > 0 ? shaft[^1] : (Column: to, Row: end);
        _grid.Put(head.Column, head.Row, glyphs.Sign(arrow)[0]);
    }

    /// <summary>The cells between the ends of an arrow.</summary>
    private List<(int Column, int Row)> Shaft(Element.Arrow arrow)
    {
        var (from, to) = (plane.Column(arrow.From.X), plane.Column(arrow.To.X));
        var (start, end) = (plane.Row(arrow.From.Y), plane.Row(arrow.To.Y));
        var steps = Math.Min(Math.Max(Math.Abs(to - from), Math.Abs(end - start)), MostSteps);
        return [.. Enumerable.Range(1, Math.Max(0, steps - 1)).Select(i => i / (double)steps)
            .Select(part => ((int)Math.Round(from + (part * (to - from))), (int)Math.Round(start + (part * (end - start)))))];
    }

    /// <summary>A letter for each of several runs: a small one, or a capital where settled values have the small ones.</summary>
    private void Marks(Element.Marks marks)
    {
        var both = panel.Elements.Any(e => e is Element.Marks { Meaning: Meaning.Settled });
        var sign = (marks.Meaning, marks.Of) switch
        {
            (Meaning.Reading, { } i) => RunFrame.Letter(i % 26, both ? 'A' : i < 26 ? 'a' : 'A'),
            (Meaning.Settled, { } i) => RunFrame.Letter(i % 26),
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
            _grid.Put(_grid.Columns - 1, plane.Row(at.Y), RunFrame.Letter(i));
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
            Number(contours, level, bands);
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

    /// <summary>The number stands where the contour meets the floor, or above that where there is room.</summary>
    private void Number(Element.Contours contours, double level, Element.InBand[] bands)
    {
        var text = glyphs.Number(level);
        for (var row = _grid.Rows - 1; row >= 0; row--)
        {
            for (var column = 0; column + 1 < _grid.Columns; column++)
            {
                bool IsInBand(int at) => Array.Exists(bands, b => b.Holds(X(at), Y(row)));
                if (contours.Field.At(X(column), Y(row)) < level && contours.Field.At(X(column + 1), Y(row)) >= level
                    && !Enumerable.Range(column + 1, text.Length).Any(IsInBand) && Write([text], column + 1, row))
                {
                    return;
                }
            }
        }
    }
}
