using OxyPlot;
using OxyPlot.Annotations;

namespace Viscolog.Plots;

/// <summary>A line of text in the middle of a plot that has nothing else to show.</summary>
/// <param name="text">Already cleaned.</param>
internal sealed class MiddleNote(string text) : Annotation
{
    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        var area = PlotModel.PlotArea;
        var style = new LabelStyle(ActualFont, PlotStyle.TextSize + 3, PlotStyle.Ink);
        var size = ScreenLabel.Measure(rc, [text], style);
        ScreenLabel.Draw(rc, [text], new(area.Center.X - (size.Width / 2), area.Center.Y - (size.Height / 2)), area, style);
    }
}
