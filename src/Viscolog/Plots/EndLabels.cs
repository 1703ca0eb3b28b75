using OxyPlot;
using OxyPlot.Annotations;

namespace Viscolog.Plots;

/// <summary>Labels at the right ends of traces, moved apart so that each can be read, with a hair line back to its trace.</summary>
/// <param name="ends">Where each trace ends, and its label.</param>
/// <param name="column">Where the labels stand across, in the axis's unit.</param>
internal sealed class EndLabels(IReadOnlyList<(DataPoint End, string Text, OxyColor Color)> ends, double column) : Annotation
{
    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        var area = PlotModel.PlotArea;
        var style = new LabelStyle(ActualFont, PlotStyle.TextSize, PlotStyle.Ink);
        var height = ScreenLabel.Measure(rc, ["0"], style).Height - 2;
        if (height * ends.Count > area.Height)
        {
            // Too many for their size: smaller, so that all still fit.
            style = style with { Size = style.Size * area.Height / (height * ends.Count), Ground = 0 };
            height = area.Height / ends.Count;
        }

        var sorted = ends.Select(e => (At: this.Transform(e.End.X, e.End.Y), e.Text, e.Color)).OrderBy(e => e.At.Y).ToList();
        var x = this.Transform(column, 1).X;
        var tops = Spread([.. sorted.Select(e => e.At.Y - (height / 2))], height, area);
        for (var i = 0; i < sorted.Count; i++)
        {
            var middle = tops[i] + (height / 2);
            rc.DrawLine([sorted[i].At, new(x - 2, middle)], OxyColor.FromAColor(0xA0, sorted[i].Color), 0.7, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
            ScreenLabel.Draw(rc, [sorted[i].Text], new(x, tops[i]), area, style);
        }
    }

    /// <summary>Pushes labels down where they would touch, then the lowest ones up again where they would leave the plot.</summary>
    private static double[] Spread(double[] tops, double height, OxyRect area)
    {
        for (var i = 0; i < tops.Length; i++)
        {
            tops[i] = Math.Max(tops[i], i == 0 ? area.Top : tops[i - 1] + height);
        }

        for (var i = tops.Length - 1; i >= 0; i--)
        {
            tops[i] = Math.Min(tops[i], i == tops.Length - 1 ? area.Bottom - height : tops[i + 1] - height);
        }

        return tops;
    }
}
