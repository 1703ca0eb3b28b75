using Viscolog.Core.Advising;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The pictures of a run in characters, as <see cref="PlotRenderer"/> draws them into files.</summary>
internal static class RunCharts
{
    /// <summary>Draws a picture.</summary>
    /// <param name="pictures">At least one run.</param>
    /// <param name="kind">Which picture.</param>
    /// <param name="width">Columns; no line is longer.</param>
    /// <param name="height">Lines.</param>
    /// <param name="ascii">Whether only characters from 0x20 to 0x7E may be used.</param>
    public static IReadOnlyList<string> Draw(IReadOnlyList<RunPicture> pictures, PlotKind kind, int width, int height, bool ascii)
    {
        if (kind == PlotKind.Dose || width < TerminalChart.LeastWidth || height < TerminalChart.LeastHeight)
        {
            return TerminalChart.Draw(pictures, width, height, ascii);
        }

        var glyphs = ascii ? ChartGlyphs.Plain : ChartGlyphs.Rich;
        var lines = kind switch
        {
            PlotKind.Settling => SettlingChart.Draw(pictures, width, height, glyphs),
            PlotKind.Residuals => ResidualChart.Draw(pictures, width, height, glyphs),
            _ => StringChart.Draw(pictures, width, height, glyphs),
        };
        return [.. lines.Select(l => PlainText.Shorten(l.TrimEnd(), width, glyphs.Ellipsis))];
    }

    /// <summary>What is counted, and of which run.</summary>
    public static string Head(IReadOnlyList<RunPicture> pictures, string what, ChartGlyphs glyphs)
        => glyphs.Show(what) + glyphs.Between + glyphs.Show(pictures.Count == 1 ? pictures[0].Name ?? "run without a name" : $"{pictures.Count} runs");

    /// <summary>A mark of one's own for each of several runs or steps.</summary>
    public static char Letter(int i) => (char)((i < 26 ? 'a' : 'A') + (i % 26));

    /// <summary>Each run's letter with its name.</summary>
    public static IEnumerable<string> Names(IReadOnlyList<RunPicture> pictures, ChartGlyphs glyphs)
        => pictures.Select((p, i) => $"{Letter(i)} {PlainText.Shorten(glyphs.Show(p.Name ?? "without a name"), 24, glyphs.Ellipsis)}");
}
