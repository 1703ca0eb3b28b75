using System.Globalization;
using Viscolog.Core.Advising;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>Body over dose, drawn in characters.</summary>
internal static class TerminalChart
{
    public const int LeastWidth = 40;
    public const int LeastHeight = 10;
    public const int UsualWidth = 72;
    public const int UsualHeight = 20;

    /// <summary>Draws one run.</summary>
    /// <param name="picture">The run.</param>
    /// <param name="width">Columns; no line is longer.</param>
    /// <param name="height">Lines.</param>
    /// <param name="ascii">Whether only characters from 0x20 to 0x7E may be used.</param>
    /// <returns>Lines without trailing spaces; one line that asks for room where there is too little.</returns>
    public static IReadOnlyList<string> Draw(RunPicture picture, int width = UsualWidth, int height = UsualHeight, bool ascii = false)
        => Draw([picture], width, height, ascii);

    /// <summary>Draws several runs over each other, each with a letter of its own.</summary>
    /// <exception cref="ArgumentException">There is no picture.</exception>
    public static IReadOnlyList<string> Draw(IReadOnlyList<RunPicture> pictures, int width, int height, bool ascii)
    {
        if (pictures.Count == 0)
        {
            throw new ArgumentException("needs at least one picture", nameof(pictures));
        }

        var glyphs = ascii ? ChartGlyphs.Plain : ChartGlyphs.Rich;
        if (width < LeastWidth || height < LeastHeight)
        {
            var ask = string.Create(CultureInfo.InvariantCulture, $"the chart needs {LeastWidth} x {LeastHeight} characters");
            return [PlainText.Shorten(ask, Math.Max(width, 3), "...")];
        }

        var window = DoseWindow.Of(pictures);
        var legend = ChartLegend.Lines(pictures, glyphs, width, height < 12 ? 2 : height < 16 ? 3 : 4);
        var across = new CharAxis("dose, %", 0, window.Dose, IsLogarithmic: false);
        var up = new CharAxis("", window.Low, window.High, IsLogarithmic: true);
        var chart = CharPanel.Draw(Head(pictures, glyphs), across, up, width, height - legend.Count, glyphs, plane => ChartPainter.Paint(pictures, plane, glyphs));
        return [.. chart, .. legend.Select(l => PlainText.Shorten(l.TrimEnd(), width, glyphs.Ellipsis))];
    }

    private static string Head(IReadOnlyList<RunPicture> pictures, ChartGlyphs glyphs)
    {
        var celsius = PlotFrame.Same(pictures, p => PlotText.Celsius(p.ReferenceTemperature)) ?? "different temperatures";
        var name = pictures.Count == 1 ? pictures[0].Name ?? "run without a name" : $"{pictures.Count} runs";
        var method = pictures is [{ Method: { } how }] ? $" by {how}" : "";
        return glyphs.Show($"{PlotText.Unit} at {celsius}{method}") + glyphs.Between + glyphs.Show(name);
    }
}
