using OxyPlot;
using OxyPlot.Annotations;
using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>The advised addition: an arrow from where the pot is to the expected place, with its interval.</summary>
/// <param name="next">The addition.</param>
/// <param name="labelled">Whether its numbers stand beside it.</param>
internal sealed class NextArrow(NextIncrement next, bool labelled) : Annotation
{
    private const double Cap = 5;
    private const double Head = 14;
    private const double HeadHalf = 5.5;

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        var area = PlotModel.PlotArea;
        var from = Place(next.From.Percent, next.Body.MilliPascalSeconds, area);
        var to = Place(next.To.Percent, next.Expected.Median.MilliPascalSeconds, area);
        var low = Place(next.To.Percent, next.Expected.Low.MilliPascalSeconds, area);
        var high = Place(next.To.Percent, next.Expected.High.MilliPascalSeconds, area);
        Line(rc, low, high, 2);
        Line(rc, new(low.X - Cap, low.Y), new(low.X + Cap, low.Y), 2);
        Line(rc, new(high.X - Cap, high.Y), new(high.X + Cap, high.Y), 2);
        Arrow(rc, from, to);
        if (labelled)
        {
            Label(rc, low, area);
        }
    }

    private static void Line(IRenderContext rc, ScreenPoint a, ScreenPoint b, double thickness)
        => rc.DrawLine([a, b], PlotStyle.Next, thickness, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);

    private static void Arrow(IRenderContext rc, ScreenPoint from, ScreenPoint to)
    {
        var along = to - from;
        if (along.Length < 1)
        {
            return;
        }

        along.Normalize();
        var across = new ScreenVector(-along.Y, along.X);
        var neck = to - (along * Head);
        // A white casing keeps it apart from the curve that it runs along.
        rc.DrawLine([from, neck], OxyColors.White, 7, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
        Line(rc, from, neck, 3);
        rc.DrawPolygon(
            [to, neck + (across * HeadHalf), neck - (across * HeadHalf)],
            PlotStyle.Next,
            OxyColors.White,
            0.8,
            EdgeRenderingMode.PreferGeometricAccuracy,
            null,
            LineJoin.Miter);
    }

    private ScreenPoint Place(double dose, double viscosity, OxyRect area)
    {
        var p = this.Transform(dose, viscosity);
        return new(Math.Clamp(p.X, area.Left, area.Right), Math.Clamp(p.Y, area.Top, area.Bottom));
    }

    /// <summary>Below right of the interval, where a rising curve leaves room.</summary>
    private void Label(IRenderContext rc, ScreenPoint low, OxyRect area)
    {
        var e = next.Expected;
        string[] lines =
        [
            $"next: to {PlotText.Percent(next.To)}",
            $"expect {PlotText.Number(e.Median)} {PlotText.Unit}",
            $"{PlotText.Level(e)}: {PlotText.Number(e.Low)} to {PlotText.Number(e.High)}",
        ];
        ScreenLabel.Draw(rc, lines, new(low.X + Cap + 4, low.Y + 4), area, new LabelStyle(ActualFont, PlotStyle.TextSize, OxyColor.FromRgb(0x9C, 0x45, 0x00)));
    }
}
