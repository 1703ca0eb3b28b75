using OxyPlot;
using OxyPlot.Annotations;

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

    protected static void Line(IRenderContext rc, ScreenPoint a, ScreenPoint b, Pen pen) => rc.DrawLine(
        [a, b], pen.Color, pen.Width, EdgeRenderingMode.PreferGeometricAccuracy, pen.Dash.GetDashArray(), LineJoin.Miter);

    /// <summary>A place on the screen, kept inside the panel.</summary>
    protected ScreenPoint Place(Spot spot)
    {
        var p = this.Transform(spot.X, spot.Y);
        return new(Math.Clamp(p.X, Area.Left, Area.Right), Math.Clamp(p.Y, Area.Top, Area.Bottom));
    }

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
        if (style.Ground > 0)
        {
            var ground = OxyColor.FromAColor(style.Ground, OxyColors.White);
            rc.DrawRectangle(new OxyRect(left, top, size.Width, size.Height), ground, OxyColors.Undefined, 0, EdgeRenderingMode.Automatic);
        }

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

/// <summary>The band aimed at: edge lines and a level hatch.</summary>
internal sealed class TargetBand(Element.Target target) : PanelAnnotation
{
    private const double HatchGap = 4;

    protected override void Draw(IRenderContext rc)
    {
        var top = Math.Max(Area.Top, this.Transform(0, target.High).Y);
        var bottom = Math.Min(Area.Bottom, this.Transform(0, target.Low).Y);
        var pen = Looks.Pen(Meaning.Target, target.Of);
        for (var y = top + HatchGap; y < bottom - 1; y += HatchGap)
        {
            Line(rc, new(Area.Left, y), new(Area.Right, y), OxyColor.FromAColor(0x70, pen.Color), 0.5);
        }

        Line(rc, new(Area.Left, top), new(Area.Right, top), pen);
        Line(rc, new(Area.Left, bottom), new(Area.Right, bottom), pen);
    }
}

/// <summary>The doses beyond a limit: shaded, and hatched aslant; or a line alone.</summary>
internal sealed class LimitRegion(Element.Limit limit) : PanelAnnotation
{
    private const double HatchGap = 9;
    private static readonly double[] Dashes = [8, 3, 2, 3];

    protected override void Draw(IRenderContext rc)
    {
        var left = Math.Clamp(this.Transform(limit.From, 1).X, Area.Left, Area.Right);
        var (top, bottom) = (new ScreenPoint(left, Area.Top), new ScreenPoint(left, Area.Bottom));
        if (!limit.IsShaded)
        {
            Line(rc, bottom, top, Looks.Pen(Meaning.Limit, limit.Of));
            return;
        }

        var region = new OxyRect(left, Area.Top, Area.Right - left, Area.Height);
        rc.DrawRectangle(region, OxyColor.FromAColor(0x22, Looks.Limit), OxyColors.Undefined, 0, EdgeRenderingMode.Automatic);
        Hatch(rc, region);
        rc.DrawLine([top, bottom], Looks.Limit, 1.8, EdgeRenderingMode.Automatic, Dashes, LineJoin.Miter);
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
}

/// <summary>An addition: an arrow from where the pot was to where it came or is expected to come, with its interval.</summary>
internal sealed class AdditionArrow(Element.Arrow arrow) : PanelAnnotation
{
    /// <summary>Half the width of the ends of an interval.</summary>
    public const double Cap = 5;

    /// <summary>Half the width of the head.</summary>
    public const double HeadHalf = 5.5;

    private const double Head = 14;

    /// <summary>What is left free at either end of an arrow between two marks.</summary>
    private const double Clear = 10;

    protected override void Draw(IRenderContext rc)
    {
        var pen = Looks.Pen(arrow.Meaning, arrow.Of);
        if (arrow.Interval is { } interval)
        {
            Bar(rc, Place(new(interval.X, interval.Low)), Place(new(interval.X, interval.High)), pen);
        }

        var (from, to) = (Place(arrow.From), Place(arrow.To));
        var along = to - from;
        var length = along.Length;
        if (length < 1)
        {
            return;
        }

        along.Normalize();
        var clear = arrow.Meaning == Meaning.LetDown ? Math.Min(Clear, Math.Max(0, (length - Head) / 2)) : 0;
        Arrow(rc, from + (along * clear), to - (along * clear), along, pen);
    }

    private static void Bar(IRenderContext rc, ScreenPoint low, ScreenPoint high, Pen pen)
    {
        Line(rc, low, high, pen.Color, 2);
        Line(rc, new(low.X - Cap, low.Y), new(low.X + Cap, low.Y), pen.Color, 2);
        Line(rc, new(high.X - Cap, high.Y), new(high.X + Cap, high.Y), pen.Color, 2);
    }

    private static void Arrow(IRenderContext rc, ScreenPoint from, ScreenPoint to, ScreenVector along, Pen pen)
    {
        var across = new ScreenVector(-along.Y, along.X) * HeadHalf;
        var neck = to - (along * Head);

        // A white casing keeps it apart from the curve that it runs along.
        Line(rc, from, neck, OxyColors.White, pen.Width + 4);
        Line(rc, from, neck, pen.Color, pen.Width);
        ScreenPoint[] head = [to, neck + across, neck - across];
        rc.DrawPolygon(head, pen.Color, OxyColors.White, 0.8, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
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
            height = (Area.Height - Measure(rc, ["0"], style).Height) / (ends.Traces.Length - 1);
        }

        var sorted = ends.Traces.Select((e, i) => (At: this.Transform(e.At.X, e.At.Y), e.Text, Color: Looks.Color(i)))
            .OrderBy(e => e.At.Y).ToList();
        var x = this.Transform(column, 1).X;
        var tops = Spread([.. sorted.Select(e => e.At.Y - (height / 2))], height, Area.Bottom - Measure(rc, ["0"], style).Height);
        for (var i = 0; i < sorted.Count; i++)
        {
            Line(rc, sorted[i].At, new(x - 2, tops[i] + (height / 2)), OxyColor.FromAColor(0xA0, sorted[i].Color), 0.7);
            Label(rc, [sorted[i].Text], new(x, tops[i]), style);
        }
    }

    /// <summary>Pushes labels down where they would touch, then the lowest ones up again where they would leave the panel.</summary>
    private double[] Spread(double[] tops, double height, double last)
    {
        for (var i = 0; i < tops.Length; i++)
        {
            tops[i] = Math.Max(tops[i], i == 0 ? Area.Top : tops[i - 1] + height);
        }

        for (var i = tops.Length - 1; i >= 0; i--)
        {
            tops[i] = Math.Min(tops[i], i == tops.Length - 1 ? last : tops[i + 1] - height);
        }

        return tops;
    }
}
