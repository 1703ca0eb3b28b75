using OxyPlot;
using OxyPlot.Series;

namespace Viscolog.Plots;

/// <summary>Marks with a cross over each, in the plot and in the legend.</summary>
internal sealed class CrossedMarks : LineSeries
{
    private const double Reach = 7.5;

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        foreach (var point in Points)
        {
            Cross(rc, this.Transform(point.X, point.Y));
        }
    }

    public override void RenderLegend(IRenderContext rc, OxyRect legendBox)
    {
        base.RenderLegend(rc, legendBox);
        Cross(rc, legendBox.Center);
    }

    private static void Cross(IRenderContext rc, ScreenPoint p)
    {
        Stroke(rc, new(p.X - Reach, p.Y - Reach), new(p.X + Reach, p.Y + Reach));
        Stroke(rc, new(p.X - Reach, p.Y + Reach), new(p.X + Reach, p.Y - Reach));
    }

    private static void Stroke(IRenderContext rc, ScreenPoint a, ScreenPoint b)
        => rc.DrawLine([a, b], PlotStyle.Ink, 1.6, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
}
