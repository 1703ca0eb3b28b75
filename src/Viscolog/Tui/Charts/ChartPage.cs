using Viscolog.Plots;
using Viscolog.Plots.Characters;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Charts;

/// <summary>What the chart screen shows.</summary>
internal static class ChartPage
{
    public static Page Of(ChartState state, int width, int height, bool isAscii)
    {
        var page = new Page(width, height, isAscii);
        if (width < TerminalChart.LeastWidth + 2 || height < TerminalChart.LeastHeight + 3)
        {
            page.Add($"the chart needs {TerminalChart.LeastWidth + 2} x {TerminalChart.LeastHeight + 3} characters");
            return page;
        }

        page.Add(new Piece(state.Kind switch
        {
            PlotKind.Dose => " Body over dose",
            PlotKind.Settling => " The way to each settled value",
            PlotKind.String => " String length over dose",
            _ => " How far readings lie off the curve",
        }, Tone.Strong));
        foreach (var line in TerminalChart.Draw(RunPlots.Of(state.Pictures, state.Kind), width - 2, height - 3, isAscii))
        {
            page.Add(" " + line);
        }

        page.FillTo(height - 2);
        page.Add(" " + state.Said, Tone.Dim);
        page.Add(" F6 next picture  F7 export SVG, PDF or PNG  Esc back  ^Q quit", Tone.Dim);
        return page;
    }
}
