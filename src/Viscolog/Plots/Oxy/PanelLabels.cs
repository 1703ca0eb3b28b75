using OxyPlot;
using Viscolog.Text;

namespace Viscolog.Plots.Oxy;

/// <summary>All labels inside a panel, each where it covers no mark and no other label; one without such a place is left out.</summary>
internal sealed class PanelLabels(Panel panel) : PanelAnnotation
{
    /// <summary>Px from the middle of a mark to its words, with its half width in it.</summary>
    private const double Gap = 12;
    private const double Inset = 6;

    /// <summary>Px between the places that are tried along a line.</summary>
    private const double Step = 12;

    /// <summary>Columns of the longest reason.</summary>
    private const int ReasonColumns = 400;

    /// <summary>Px across of a limit's words beside its line.</summary>
    private const double BesideWidth = 120;

    protected override void Draw(IRenderContext rc)
    {
        var room = new LabelRoom(Area);
        foreach (var element in panel.Elements)
        {
            Fill(room, element);
        }

        // What has the fewest places to stand comes first.
        foreach (var element in panel.Elements.OrderBy(Rank))
        {
            switch (element)
            {
                case Element.Words words:
                    var style = new LabelStyle(ActualFont, Looks.TextSize, Looks.Text(words.Meaning), Ground: 0);
                    Put(rc, room, [words.Text], style, s => Around(words, s), LabelRoom.Wide);
                    break;
                case Element.Arrow { Lines.IsEmpty: false } arrow:
                    Put(rc, room, arrow.Lines, new(ActualFont, Looks.TextSize, Looks.NextText), s => Beside(arrow, s));
                    break;
                case Element.Limit { Text: { } text } limit:
                    PutReason(rc, room, limit, text);
                    break;
                case Element.Target { Text: { } text } target:
                    PutTarget(rc, room, target, text);
                    break;
                case Element.Contours contours:
                    PutNumbers(rc, room, contours, contours.Field, contours.Levels);
                    break;
                case Element.InBand band:
                    PutNumbers(rc, room, band, band.Field, [band.Low, band.High]);
                    break;
            }
        }

        if (panel.Nothing is { } nothing)
        {
            Put(rc, room, [nothing], new(ActualFont, Looks.TextSize + 3, Looks.Ink), s => Enumerable.Range(0, 60).Select(i =>
                new ScreenPoint(Area.Center.X - (s.Width / 2), Area.Center.Y - (s.Height / 2) + ((i % 2 == 0 ? i : -i) / 2 * Step / 2))));
        }
    }

    private static int Rank(Element element) => element switch
    {
        Element.Words => 0,
        Element.Arrow => 1,
        Element.Limit { IsShaded: true } => 2,
        Element.Target => 3,
        Element.InBand => 4,
        _ => 5,
    };

    /// <summary>Takes the room of an element.</summary>
    private void Fill(LabelRoom room, Element element)
    {
        switch (element)
        {
            case Element.Marks marks:
                var half = Math.Max(
                    (1.2 * Looks.Face(marks.Meaning, marks.Of).Size) + 2, marks.Meaning == Meaning.Doubted ? CrossedMarks.Reach + 1 : 0);
                foreach (var spot in marks.Points)
                {
                    room.Take(this.Transform(spot.X, spot.Y), half);
                }

                break;
            case Element.Bars bars:
                foreach (var (x, low, high) in bars.Spans)
                {
                    room.Take(Place(new(x, low)), Place(new(x, high)), Face.UsualSize);
                }

                break;
            case Element.Arrow arrow:
                room.Take(Place(arrow.From), Place(arrow.To), AdditionArrow.HeadHalf);
                if (arrow.Interval is { } interval)
                {
                    room.Take(Place(new(interval.X, interval.Low)), Place(new(interval.X, interval.High)), AdditionArrow.Cap);
                }

                break;
            case Element.Line line:
                room.Avoid([.. line.Points.Select(Place)]);
                break;
            case Element.Level level:
                Avoid(room, level.Y);
                break;
            case Element.Contours contours:
                Avoid(room, contours.Field, contours.Levels);
                break;
            case Element.InBand band:
                Avoid(room, band.Field, [band.Low, band.High]);
                break;
            case Element.Target target:
                Avoid(room, target.Low);
                Avoid(room, target.High);
                break;
            case Element.Limit limit:
                var left = Place(new(limit.From, panel.Up.High)).X;
                room.Avoid([new(left, Area.Top), new(left, Area.Bottom)]);
                break;
        }
    }

    private void Avoid(LabelRoom room, double y)
    {
        var at = this.Transform(panel.Across.High, y).Y;
        room.Avoid([new(Area.Left, at), new(Area.Right, at)]);
    }

    private void Avoid(LabelRoom room, Field field, IEnumerable<double> levels)
    {
        foreach (var spot in levels.Where(l => l > 0).SelectMany(field.Crossings))
        {
            var at = Place(spot);
            room.Avoid([at, at]);
        }
    }

    private bool Put(
        IRenderContext rc, LabelRoom room, IReadOnlyList<string> lines, LabelStyle style, Func<OxySize, IEnumerable<ScreenPoint>> places,
        double cost = LabelRoom.Close)
    {
        var size = Measure(rc, lines, style);
        if (room.Place(size, places(size), cost) is not { } box)
        {
            return false;
        }

        Label(rc, lines, box.TopLeft, style);
        return true;
    }

    /// <summary>Around a mark, first on the side that is asked for.</summary>
    private IEnumerable<ScreenPoint> Around(Element.Words words, OxySize size)
    {
        var at = this.Transform(words.At.X, words.At.Y);
        (int X, int Y)[] sides = words.Side switch
        {
            < 0 => [(-1, -1), (-1, 0), (0, -1), (-1, 1), (1, -1), (1, 0), (0, 1), (1, 1)],
            0 => [(0, -1), (1, 0), (-1, 0), (1, -1), (-1, -1), (0, 1), (1, 1), (-1, 1)],
            _ => [(0, 1), (1, 0), (-1, 0), (1, 1), (-1, 1), (0, -1), (1, -1), (-1, -1)],
        };
        return from ring in Enumerable.Range(0, 8)
               let gap = Gap + (ring * size.Height / 2)
               from side in sides
               select new ScreenPoint(
                   at.X + (side.X * (gap + (size.Width / 2))) - (size.Width / 2),
                   at.Y + (side.Y * (gap + (size.Height / 2))) - (size.Height / 2));
    }

    /// <summary>Below right of the interval, where a rising curve leaves room, else further off or on another side.</summary>
    private IEnumerable<ScreenPoint> Beside(Element.Arrow arrow, OxySize size)
    {
        var (low, high) = arrow.Interval is { } i ? (Place(new(i.X, i.Low)), Place(new(i.X, i.High))) : (Place(arrow.To), Place(arrow.To));
        var (right, left) = (low.X + AdditionArrow.Cap + 4, low.X - AdditionArrow.Cap - 4 - size.Width);
        return Enumerable.Range(0, 40).Select(n => n * Step).SelectMany(off => new ScreenPoint[]
        {
            new(right, low.Y + 4 + off), new(left, high.Y - size.Height - 4 - off), new(left, low.Y + 4 + off),
            new(right, high.Y - size.Height - 4 - off), new(right, low.Y + 4 - off), new(left, high.Y - size.Height - 4 + off),
        });
    }

    /// <summary>On one line where there is room beside the band, else on two.</summary>
    private void PutTarget(IRenderContext rc, LabelRoom room, Element.Target target, string text)
    {
        var style = new LabelStyle(ActualFont, Looks.TextSize, target.Of is null ? Looks.Target : Looks.Ink);
        var whole = target.Value is null ? text : $"{text} {target.Value}";
        if (!Put(rc, room, [whole], style, s => Beside(target, s)) && target.Value is { } value)
        {
            Put(rc, room, [text, value], style, s => Beside(target, s));
        }
    }

    /// <summary>Along its upper edge, else along the lower one.</summary>
    private IEnumerable<ScreenPoint> Beside(Element.Target target, OxySize size)
    {
        var (top, bottom) = (this.Transform(0, target.High).Y, this.Transform(0, target.Low).Y);
        double[] rows = [top - size.Height - 2, bottom + 2];
        return from y in rows.Where(y => y >= Area.Top && y + size.Height <= Area.Bottom).DefaultIfEmpty(bottom + 2)
               from n in Enumerable.Range(0, (int)Math.Max(1, (Area.Width - size.Width) / Step))
               select new ScreenPoint(Area.Left + Inset + (n * Step), y);
    }

    /// <summary>As low in the region as can be, where a rising curve leaves room; beside a line on either side of it.</summary>
    private void PutReason(IRenderContext rc, LabelRoom room, Element.Limit limit, string text)
    {
        var style = new LabelStyle(ActualFont, Looks.TextSize - 1, Looks.Ink, 0xE8);
        var edge = Place(new(limit.From, panel.Up.High)).X;
        var across = limit.IsShaded ? Math.Max(60, Area.Right - edge - (2 * Inset) - 4) : BesideWidth;
        double Width(string s) => rc.MeasureText(s, style.Font, style.Size, FontWeights.Normal).Width;
        var lines = Paragraph.Broken(PlainText.Shorten(text, ReasonColumns), across, Width);
        var fit = (int)((Area.Height - (4 * Inset)) / (Measure(rc, ["0"], style).Height - 3));
        lines = lines.Count > fit ? [.. lines.Take(fit - 1), "…"] : lines;
        IEnumerable<ScreenPoint> Places(OxySize size)
            => from left in limit.IsShaded ? new[] { Area.Right - Inset - size.Width } : [edge + 3, edge - 3 - size.Width]
               from n in Enumerable.Range(0, (int)Math.Max(1, Area.Height / Step))
               select new ScreenPoint(left, Area.Bottom - Inset - size.Height - (n * Step));
        if (!Put(rc, room, lines, style, Places) && lines.Count > 1)
        {
            Put(rc, room, [Say("limit")], style, Places);
        }
    }

    /// <summary>Each level's number on its line.</summary>
    private void PutNumbers(IRenderContext rc, LabelRoom room, Element element, Field field, IReadOnlyList<double> levels)
    {
        var style = new LabelStyle(ActualFont, Looks.TextSize - 1, Looks.Pen(element.Meaning, element.Of).Color, 0xE0);
        foreach (var level in levels.Where(l => l > 0))
        {
            // A number that would be moved back into the panel would no longer stand on its line.
            Put(rc, room, [PlotText.Stated(level)], style, size => field.Crossings(level).Select(s => this.Transform(s.X, s.Y))
                .Select(p => new ScreenPoint(p.X - (size.Width / 2), p.Y - (size.Height / 2)))
                .Where(p => p.X >= Area.Left && p.X + size.Width <= Area.Right && p.Y >= Area.Top && p.Y + size.Height <= Area.Bottom));
        }
    }
}
