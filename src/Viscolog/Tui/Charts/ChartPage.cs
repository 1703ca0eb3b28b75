using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Charts;

/// <summary>What the chart screen shows.</summary>
internal static class ChartPage
{
    public static Page Of(ChartState state, Canvas canvas)
        => Page.Of(canvas, Say("the chart"), page => Draw(page, state), TerminalChart.LeastWidth + 2, TerminalChart.LeastHeight + 3);

    private static void Draw(Page page, ChartState state)
    {
        page.Add(new Piece(" " + state.Kind switch
        {
            PlotKind.Dose => Say("Body over dose"),
            PlotKind.Settling => Say("The way to each settled value"),
            PlotKind.String => Say("String length over dose"),
            PlotKind.Map => Say("Body and string over both doses"),
            _ => Say("How far readings are from the curve"),
        }, Tone.Strong));
        foreach (var line in TerminalChart.Draw(RunPlots.Of(state.Pictures, state.Kind), page.Width - 2, page.Height - 3, page.IsAscii))
        {
            page.Add(" " + line);
        }

        page.Foot(state.Said, ChartScreen.Keys);
    }
}
