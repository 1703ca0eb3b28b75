using OxyPlot;
using OxyPlot.Annotations;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>The band aimed at: edge lines, a level hatch and its numbers.</summary>
/// <param name="band">The band.</param>
/// <param name="label">Words before the numbers.</param>
/// <param name="row">Where one of several labels stands, from 0 at the top of the plot; null for a single one, beside its band.</param>
internal sealed class TargetBand(ViscosityBand band, string label, int? row) : Annotation
{
    private const double HatchGap = 4;

    /// <summary>What the band's label says.</summary>
    public string Text { get; } = $"{label} {PlotText.Number(band.Aim)} {PlotText.Unit} ({PlotText.Number(band.Low)} to {PlotText.Number(band.High)})";

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        var area = PlotModel.PlotArea;
        var top = Math.Max(area.Top, this.Transform(0, band.High.MilliPascalSeconds).Y);
        var bottom = Math.Min(area.Bottom, this.Transform(0, band.Low.MilliPascalSeconds).Y);
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
        var height = ScreenLabel.Measure(rc, [Text], style).Height;
        var above = top - height - 2;
        var beside = above >= area.Top ? above : bottom + 2;
        ScreenLabel.Draw(rc, [Text], new(area.Left + 6, row is { } place ? area.Top + 4 + (place * height) : beside), area, style);
    }
}
