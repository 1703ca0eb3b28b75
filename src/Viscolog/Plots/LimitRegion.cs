using OxyPlot;
using OxyPlot.Annotations;
using Viscolog.Core.Advising;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The doses beyond the limit: shaded, hatched aslant, with the reason written in.</summary>
/// <param name="limit">The limit.</param>
/// <param name="whose">The run it belongs to where there are several; else empty.</param>
internal sealed class LimitRegion(DoseLimit limit, string whose) : Annotation
{
    private const double HatchGap = 9;
    private const double Inset = 6;
    private static readonly double[] Dashes = [8, 3, 2, 3];

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        var area = PlotModel.PlotArea;
        var left = Math.Clamp(this.Transform(limit.Dose.Percent, 1).X, area.Left, area.Right);
        var region = new OxyRect(left, area.Top, area.Right - left, area.Height);
        rc.DrawRectangle(region, OxyColor.FromAColor(0x22, PlotStyle.Limit), OxyColors.Undefined, 0, EdgeRenderingMode.Automatic);
        Hatch(rc, region);
        rc.DrawLine([new(left, area.Top), new(left, area.Bottom)], PlotStyle.Limit, 1.8, EdgeRenderingMode.Automatic, Dashes, LineJoin.Miter);
        Reason(rc, region);
    }

    private static void Hatch(IRenderContext rc, OxyRect region)
    {
        for (var c = HatchGap; c < region.Width + region.Height; c += HatchGap)
        {
            // The line x + y = c, cut at the region's sides.
            var from = new ScreenPoint(region.Left + Math.Min(c, region.Width), region.Top + Math.Max(0, c - region.Width));
            var to = new ScreenPoint(region.Left + Math.Max(0, c - region.Height), region.Top + Math.Min(c, region.Height));
            rc.DrawLine([from, to], OxyColor.FromAColor(0x50, PlotStyle.Limit), 0.6, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
        }
    }

    /// <summary>At the foot of the region, where a rising curve leaves room.</summary>
    private void Reason(IRenderContext rc, OxyRect region)
    {
        var style = new LabelStyle(ActualFont, PlotStyle.TextSize - 1, PlotStyle.Ink, 0xE8);
        var room = Math.Max(60, region.Width - (2 * Inset) - 4);
        double Width(string s) => rc.MeasureText(s, style.Font, style.Size, FontWeights.Normal).Width;
        var text = $"beyond the limit of {PlotText.Percent(limit.Dose)}{whose}: {PlainText.Clean(limit.Why)}";
        var lines = Paragraph.Broken(PlainText.Shorten(text, 400), room, Width);
        var fit = (int)((region.Height - (4 * Inset)) / (ScreenLabel.Measure(rc, ["0"], style).Height - 3));
        lines = lines.Count > fit ? [.. lines.Take(fit - 1), "…"] : lines;
        var size = ScreenLabel.Measure(rc, lines, style);
        var at = new ScreenPoint(region.Right - Inset - size.Width, region.Bottom - Inset - size.Height);
        ScreenLabel.Draw(rc, lines, at, PlotModel.PlotArea, style);
    }
}
