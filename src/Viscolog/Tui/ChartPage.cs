using System.Globalization;
using Viscolog.Plots;
using Viscolog.Wording;

namespace Viscolog.Tui;

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
            _ => " How far readings lie off the curve",
        }, Tone.Strong));
        var lines = state.Kind == PlotKind.Dose ? TerminalChart.Draw(state.Pictures, width - 2, height - 3, isAscii) : Table(page, state).Take(height - 3);
        foreach (var line in lines)
        {
            page.Add(" " + line);
        }

        page.FillTo(height - 2);
        page.Add(" " + state.Said, Tone.Dim);
        page.Add(" F6 next picture  F7 export SVG, PDF or PNG  Esc back  ^Q quit", Tone.Dim);
        return page;
    }

    private static IEnumerable<string> Table(Page page, ChartState state)
    {
        yield return page.Fit("run", 20) + page.Fit("dose %", 8, true) + page.Fit("wait s", 8, true) + page.Fit("read", 11, true) + page.Fit(state.Kind == PlotKind.Settling ? "settled" : "expected", 11, true) + page.Fit("off by", 9, true);
        foreach (var picture in state.Pictures)
        {
            foreach (var reading in picture.Readings)
            {
                var settled = picture.Steps.FirstOrDefault(s => s.Step == reading.Step)?.Settled.Median ?? reading.Expected;
                var against = state.Kind == PlotKind.Settling ? settled : reading.Expected;
                yield return page.Fit(picture.Name ?? "", 20) + page.Fit(reading.Dose.Percent.ToString("0.00", CultureInfo.InvariantCulture), 8, true)
                    + page.Fit(reading.Wait?.TotalSeconds.ToString("0", CultureInfo.InvariantCulture) ?? "", 8, true)
                    + page.Fit(Shown.Number(reading.Value.MilliPascalSeconds), 11, true) + page.Fit(Shown.Number(against.MilliPascalSeconds), 11, true)
                    + page.Fit((100 * ((reading.Value.MilliPascalSeconds / against.MilliPascalSeconds) - 1)).ToString("+0.0;-0.0", CultureInfo.InvariantCulture) + " %", 9, true) + (reading.Doubted ? "  doubted" : "");
            }
        }
    }
}
