using OxyPlot;
using OxyPlot.Annotations;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>The band aimed at: edge lines, a level hatch and its numbers.</summary>
/// <param name="low">Its lower edge, on the axis up.</param>
/// <param name="high">Its upper edge.</param>
/// <param name="text">What its label says.</param>
/// <param name="row">Where one of several labels stands, from 0 at the top of the plot; null for a single one, beside its band.</param>
internal sealed class TargetBand(double low, double high, string text, int? row) : Annotation
{
    private const double HatchGap = 4;

    /// <summary>The band of a viscosity, <paramref name="label"/> before its numbers.</summary>
    public static TargetBand Of(ViscosityBand band, string label, int? row) => new(
        band.Low.MilliPascalSeconds,
        band.High.MilliPascalSeconds,
        $"{label} {PlotText.Number(band.Aim)} {PlotText.Unit} ({PlotText.Number(band.Low)} to {PlotText.Number(band.High)})",
        row)
    { Layer = AnnotationLayer.BelowSeries };

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        var area = PlotModel.PlotArea;
        var top = Math.Max(area.Top, this.Transform(0, high).Y);
        var bottom = Math.Min(area.Bottom, this.Transform(0, low).Y);
        for (var y = top + HatchGap; y < bottom - 1; y += HatchGap)
        {
            Level(rc, area, y, OxyColor.FromAColor(0x70, PlotStyle.Target), 0.5);
        }

        Level(rc, area, top, PlotStyle.Target, 1.6);
        Level(rc, area, bottom, PlotStyle.Target, 1.6);
        Label(rc, area, top, bottom);
    }

    private static void Level(IRenderContext rc, OxyRect area, double y, OxyColor color, double thickness)
        => rc.DrawLine([new(area.Left, y), new(area.Right, y)], color, thickness, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);

    private void Label(IRenderContext rc, OxyRect area, double top, double bottom)
    {
        var style = new LabelStyle(ActualFont, PlotStyle.TextSize, PlotStyle.Target);
        var height = ScreenLabel.Measure(rc, [text], style).Height;
        var above = top - height - 2;
        var beside = above >= area.Top ? above : bottom + 2;
        ScreenLabel.Draw(rc, [text], new(area.Left + 6, row is { } place ? area.Top + 4 + (place * height) : beside), area, style);
    }
}
