using OxyPlot;
using OxyPlot.Annotations;
using Viscolog.Text;

namespace Viscolog.Plots.Oxy;

/// <summary>Something drawn by hand within its panel.</summary>
internal abstract class PanelAnnotation : Annotation
{
    private const double LabelGap = 2;

    /// <summary>The panel on the screen.</summary>
    protected OxyRect Area { get; private set; }

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        Area = GetClippingRect();
        Draw(rc);
    }

    protected abstract void Draw(IRenderContext rc);

    protected static void Line(IRenderContext rc, ScreenPoint a, ScreenPoint b, OxyColor color, double width)
        => rc.DrawLine([a, b], color, width, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);

    /// <summary>Draws lines of text as a block on a light ground, kept inside the panel.</summary>
    /// <param name="rc">Where to draw.</param>
    /// <param name="lines">From top to bottom.</param>
    /// <param name="at">The block's upper left corner.</param>
    /// <param name="style">Font and colour.</param>
    protected void Label(IRenderContext rc, IReadOnlyList<string> lines, ScreenPoint at, LabelStyle style)
    {
        var size = Measure(rc, lines, style);
        var left = Math.Max(Area.Left, Math.Min(at.X, Area.Right - size.Width));
        var top = Math.Max(Area.Top, Math.Min(at.Y, Area.Bottom - size.Height));
        var ground = OxyColor.FromAColor(style.Ground, OxyColors.White);
        rc.DrawRectangle(new OxyRect(left, top, size.Width, size.Height), ground, OxyColors.Undefined, 0, EdgeRenderingMode.Automatic);
        for (var i = 0; i < lines.Count; i++)
        {
            var y = top + (i * size.Height / lines.Count) + LabelGap;
            rc.DrawText(new ScreenPoint(left + LabelGap, y), lines[i], style.Color, style.Font, style.Size, FontWeights.Normal, 0);
        }
    }

    /// <summary>The room that the lines take.</summary>
    protected static OxySize Measure(IRenderContext rc, IReadOnlyList<string> lines, LabelStyle style)
    {
        var sizes = lines.Select(l => rc.MeasureText(l, style.Font, style.Size, FontWeights.Normal)).ToList();
        return new OxySize(sizes.Max(s => s.Width) + (2 * LabelGap), (sizes.Max(s => s.Height + 1) * lines.Count) + (2 * LabelGap));
    }
}

/// <summary>How a label inside a plot looks.</summary>
/// <param name="Font">Family.</param>
/// <param name="Size">In px.</param>
/// <param name="Color">Of the text.</param>
/// <param name="Ground">How much of what lies beneath is covered, 0 to 255.</param>
internal sealed record LabelStyle(string Font, double Size, OxyColor Color, byte Ground = 0xD8);

/// <summary>A line of text in the middle of a panel that has nothing else to show.</summary>
internal sealed class MiddleNote(string text) : PanelAnnotation
{
    protected override void Draw(IRenderContext rc)
    {
        var style = new LabelStyle(ActualFont, Looks.TextSize + 3, Looks.Ink);
        var size = Measure(rc, [text], style);
        Label(rc, [text], new(Area.Center.X - (size.Width / 2), Area.Center.Y - (size.Height / 2)), style);
    }
}

/// <summary>Words beside a mark.</summary>
internal sealed class MarkWords(Element.Words words) : PanelAnnotation
{
    private const double Gap = 7;

    protected override void Draw(IRenderContext rc)
    {
        var style = new LabelStyle(ActualFont, Looks.TextSize, Looks.Text(words.Meaning), Ground: 0);
        var (size, at) = (Measure(rc, [words.Text], style), this.Transform(words.At.X, words.At.Y));
        Label(rc, [words.Text], words.Side switch
        {
            < 0 => new(at.X - size.Width - Gap, at.Y - size.Height),
            0 when at.Y - size.Height - Gap < Area.Top => new(at.X + Gap, at.Y - (size.Height / 2)),
            0 => new(at.X - (size.Width / 2), at.Y - size.Height - Gap),
            _ => new(at.X - (size.Width / 2), at.Y + Gap),
        }, style);
    }
}

/// <summary>The band aimed at: edge lines, a level hatch and its words.</summary>
internal sealed class TargetBand(Element.Target target) : PanelAnnotation
{
    private const double HatchGap = 4;

    protected override void Draw(IRenderContext rc)
    {
        var top = Math.Max(Area.Top, this.Transform(0, target.High).Y);
        var bottom = Math.Min(Area.Bottom, this.Transform(0, target.Low).Y);
        for (var y = top + HatchGap; y < bottom - 1; y += HatchGap)
        {
            Level(rc, y, OxyColor.FromAColor(0x70, Looks.Target), 0.5);
        }

        Level(rc, top, Looks.Target, 1.6);
        Level(rc, bottom, Looks.Target, 1.6);
        if (target.Text is { } text)
        {
            var style = new LabelStyle(ActualFont, Looks.TextSize, Looks.Target);
            var height = Measure(rc, [text], style).Height;
            var beside = top - height - 2 >= Area.Top ? top - height - 2 : bottom + 2;
            Label(rc, [text], new(Area.Left + 6, target.Row is { } row ? Area.Top + 4 + (row * height) : beside), style);
        }
    }

    private void Level(IRenderContext rc, double y, OxyColor color, double width)
        => Line(rc, new(Area.Left, y), new(Area.Right, y), color, width);
}

/// <summary>The doses beyond the limit: shaded, hatched aslant, with the reason written in.</summary>
internal sealed class LimitRegion(Element.Limit limit) : PanelAnnotation
{
    private const double HatchGap = 9;
    private const double Inset = 6;
    private static readonly double[] Dashes = [8, 3, 2, 3];

    protected override void Draw(IRenderContext rc)
    {
        var left = Math.Clamp(this.Transform(limit.From, 1).X, Area.Left, Area.Right);
        var region = new OxyRect(left, Area.Top, Area.Right - left, Area.Height);
        rc.DrawRectangle(region, OxyColor.FromAColor(0x22, Looks.Limit), OxyColors.Undefined, 0, EdgeRenderingMode.Automatic);
        Hatch(rc, region);
        rc.DrawLine([new(left, Area.Top), new(left, Area.Bottom)], Looks.Limit, 1.8, EdgeRenderingMode.Automatic, Dashes, LineJoin.Miter);
        if (limit.Text is { } text)
        {
            Reason(rc, region, text);
        }
    }

    private static void Hatch(IRenderContext rc, OxyRect region)
    {
        for (var c = HatchGap; c < region.Width + region.Height; c += HatchGap)
        {
            // The line x + y = c, cut at the region's sides.
            var from = new ScreenPoint(region.Left + Math.Min(c, region.Width), region.Top + Math.Max(0, c - region.Width));
            var to = new ScreenPoint(region.Left + Math.Max(0, c - region.Height), region.Top + Math.Min(c, region.Height));
            Line(rc, from, to, OxyColor.FromAColor(0x50, Looks.Limit), 0.6);
        }
    }

    /// <summary>At the foot of the region, where a rising curve leaves room.</summary>
    private void Reason(IRenderContext rc, OxyRect region, string text)
    {
        var style = new LabelStyle(ActualFont, Looks.TextSize - 1, Looks.Ink, 0xE8);
        var room = Math.Max(60, region.Width - (2 * Inset) - 4);
        double Width(string s) => rc.MeasureText(s, style.Font, style.Size, FontWeights.Normal).Width;
        var lines = Paragraph.Broken(PlainText.Shorten(text, 400), room, Width);
        var fit = (int)((region.Height - (4 * Inset)) / (Measure(rc, ["0"], style).Height - 3));
        lines = lines.Count > fit ? [.. lines.Take(fit - 1), "…"] : lines;
        var size = Measure(rc, lines, style);
        Label(rc, lines, new(region.Right - Inset - size.Width, region.Bottom - Inset - size.Height), style);
    }
}

/// <summary>The advised addition: an arrow from where the pot is to the expected place, with its interval.</summary>
internal sealed class NextArrow(Element.Arrow arrow) : PanelAnnotation
{
    private const double Cap = 5;
    private const double Head = 14;
    private const double HeadHalf = 5.5;

    protected override void Draw(IRenderContext rc)
    {
        var corner = Place(arrow.To);
        if (arrow.Interval is { } interval)
        {
            corner = Place(new(interval.X, interval.Low));
            Bar(rc, corner, Place(new(interval.X, interval.High)));
        }

        Arrow(rc, Place(arrow.From), Place(arrow.To));
        if (!arrow.Lines.IsEmpty)
        {
            // Below right of the interval, where a rising curve leaves room.
            Label(rc, arrow.Lines, new(corner.X + Cap + 4, corner.Y + 4), new LabelStyle(ActualFont, Looks.TextSize, Looks.NextText));
        }
    }

    private static void Bar(IRenderContext rc, ScreenPoint low, ScreenPoint high)
    {
        Line(rc, low, high, Looks.Next, 2);
        Line(rc, new(low.X - Cap, low.Y), new(low.X + Cap, low.Y), Looks.Next, 2);
        Line(rc, new(high.X - Cap, high.Y), new(high.X + Cap, high.Y), Looks.Next, 2);
    }

    private static void Arrow(IRenderContext rc, ScreenPoint from, ScreenPoint to)
    {
        var along = to - from;
        if (along.Length < 1)
        {
            return;
        }

        along.Normalize();
        var across = new ScreenVector(-along.Y, along.X) * HeadHalf;
        var neck = to - (along * Head);

        // A white casing keeps it apart from the curve that it runs along.
        Line(rc, from, neck, OxyColors.White, 7);
        Line(rc, from, neck, Looks.Next, 3);
        ScreenPoint[] head = [to, neck + across, neck - across];
        rc.DrawPolygon(head, Looks.Next, OxyColors.White, 0.8, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
    }

    private ScreenPoint Place(Spot spot)
    {
        var p = this.Transform(spot.X, spot.Y);
        return new(Math.Clamp(p.X, Area.Left, Area.Right), Math.Clamp(p.Y, Area.Top, Area.Bottom));
    }
}

/// <summary>Labels at the right ends of traces, moved apart so that each can be read, with a hair line back to its trace.</summary>
/// <param name="ends">The traces.</param>
/// <param name="column">Where the labels stand across, in the axis's unit.</param>
internal sealed class EndLabels(Element.Ends ends, double column) : PanelAnnotation
{
    protected override void Draw(IRenderContext rc)
    {
        var style = new LabelStyle(ActualFont, Looks.TextSize, Looks.Ink);
        var height = Measure(rc, ["0"], style).Height - 2;
        if (height * ends.Traces.Length > Area.Height)
        {
            // Too many for their size: smaller, so that all still fit.
            style = style with { Size = style.Size * Area.Height / (height * ends.Traces.Length), Ground = 0 };
            height = Area.Height / ends.Traces.Length;
        }

        var sorted = ends.Traces.Select((e, i) => (At: this.Transform(e.At.X, e.At.Y), e.Text, Color: Looks.Color(i)))
            .OrderBy(e => e.At.Y).ToList();
        var x = this.Transform(column, 1).X;
        var tops = Spread([.. sorted.Select(e => e.At.Y - (height / 2))], height);
        for (var i = 0; i < sorted.Count; i++)
        {
            Line(rc, sorted[i].At, new(x - 2, tops[i] + (height / 2)), OxyColor.FromAColor(0xA0, sorted[i].Color), 0.7);
            Label(rc, [sorted[i].Text], new(x, tops[i]), style);
        }
    }

    /// <summary>Pushes labels down where they would touch, then the lowest ones up again where they would leave the panel.</summary>
    private double[] Spread(double[] tops, double height)
    {
        for (var i = 0; i < tops.Length; i++)
        {
            tops[i] = Math.Max(tops[i], i == 0 ? Area.Top : tops[i - 1] + height);
        }

        for (var i = tops.Length - 1; i >= 0; i--)
        {
            tops[i] = Math.Min(tops[i], i == tops.Length - 1 ? Area.Bottom - height : tops[i + 1] - height);
        }

        return tops;
    }
}
