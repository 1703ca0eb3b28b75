using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>Value over standing time in characters, one letter a step.</summary>
internal static class SettlingChart
{
    /// <summary>The part of the width that is kept for the settled values.</summary>
    private const double SettledShare = 0.06;

    public static IEnumerable<string> Draw(IReadOnlyList<RunPicture> pictures, int width, int height, ChartGlyphs glyphs)
    {
        var time = StandingWindow.Of(pictures);
        var value = SettlingPlot.Window(pictures);
        var across = new CharAxis($"standing, {time.Unit}", 0, time.End / (1 - SettledShare), IsLogarithmic: false);
        var up = new CharAxis("", value.Low, value.High, IsLogarithmic: true);
        var legend = Legend(pictures, glyphs, width, height < 16 ? 2 : 4);
        return CharPanel.Draw(RunCharts.Head(pictures, $"{PlotText.Unit} at {PlotText.Celsius(pictures[0].ReferenceTemperature)}", glyphs), across, up, width, height - legend.Count, glyphs, plane => Paint(pictures, time, plane, glyphs))
            .Concat(legend);
    }

    private static void Paint(IReadOnlyList<RunPicture> pictures, StandingWindow time, CharPlane plane, ChartGlyphs glyphs)
    {
        var steps = Lettered(pictures).ToList();
        foreach (var (_, _, step) in steps)
        {
            plane.Trace([.. step.Way.Select(t => (time.Of(t.Wait), t.Value.Median.MilliPascalSeconds))], '.');
        }

        foreach (var (_, letter, step) in steps)
        {
            plane.Put(plane.Across.High, step.Settled.Median.MilliPascalSeconds, letter);
            plane.Grid.Put(plane.Grid.Columns - 2, plane.Row(step.Settled.Median), glyphs.Settled);
        }

        foreach (var (picture, letter, step) in steps)
        {
            foreach (var reading in picture.Readings.Where(r => r.Step == step.Step && r.Wait is not null).OrderBy(r => r.Doubted))
            {
                plane.Put(time.Of(reading.Wait!.Value), reading.Value.MilliPascalSeconds, reading.Doubted ? glyphs.Doubted : letter);
            }
        }

        if (steps.Count == 0)
        {
            plane.Middle("nothing to show yet: no step has a reading");
        }
    }

    private static IReadOnlyList<string> Legend(IReadOnlyList<RunPicture> pictures, ChartGlyphs glyphs, int width, int most)
    {
        IEnumerable<string> items = [$"{glyphs.Settled} settled", .. Lettered(pictures).Select(s => $"{s.Letter} {PlotText.Percent(s.Step.Dose)}")];
        items = pictures.Any(p => p.Readings.Any(r => r.Doubted)) ? items.Append($"{glyphs.Doubted} doubted") : items;
        return ChartLegend.Arrange(items, glyphs, width, most);
    }

    /// <summary>Each step with the letter that its readings bear.</summary>
    private static IEnumerable<(RunPicture Picture, char Letter, PicturedStep Step)> Lettered(IReadOnlyList<RunPicture> pictures)
        => pictures.SelectMany(p => p.Steps.Select(s => (p, s))).Select((x, i) => (x.p, RunCharts.Letter(i), x.s));
}
