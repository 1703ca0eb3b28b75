using System.Globalization;
using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>Body over dose, drawn in characters.</summary>
internal static class TerminalChart
{
    public const int LeastWidth = 40;
    public const int LeastHeight = 10;
    public const int UsualWidth = 72;
    public const int UsualHeight = 20;

    /// <summary>The longest label on the viscosity axis.</summary>
    private const int LabelColumns = 9;

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
            return [PlotText.Shorten(ask, Math.Max(width, 3), "...")];
        }

        var window = DoseWindow.Of(pictures);
        var legend = ChartLegend.Lines(pictures, glyphs, width, height < 12 ? 2 : height < 16 ? 3 : 4);
        var labels = Labels(window, height - legend.Count - 3, glyphs);
        var margin = labels.Select(l => l?.Length ?? 0).Max() + 1;
        var grid = new CharGrid(width - margin, labels.Length, ascii);
        ChartPainter.Paint(pictures, new ChartScale(window, grid), glyphs);
        var rows = labels.Select((label, i) => (label ?? "").PadLeft(margin - 1) + (label is null ? glyphs.Upright : glyphs.Tick) + grid.Row(i));
        string[] lines = [Head(pictures, glyphs), .. rows, .. Foot(window, margin, width, glyphs), .. legend];
        return [.. lines.Select(l => PlotText.Shorten(l.TrimEnd(), width, glyphs.Ellipsis))];
    }

    private static string Head(IReadOnlyList<RunPicture> pictures, ChartGlyphs glyphs)
    {
        var celsius = PlotFrame.Same(pictures, p => PlotText.Celsius(p.ReferenceTemperature)) ?? "different temperatures";
        var name = pictures.Count == 1 ? pictures[0].Name ?? "run without a name" : $"{pictures.Count} runs";
        var method = pictures is [{ Method: { } how }] ? $" by {how}" : "";
        return glyphs.Show($"{PlotText.Unit} at {celsius}{method}") + glyphs.Between + glyphs.Show(name);
    }

    /// <summary>The label of each row; null where it has none.</summary>
    private static string?[] Labels(DoseWindow window, int rows, ChartGlyphs glyphs)
    {
        var labels = new string?[rows];
        var scale = new ChartScale(window, new CharGrid(1, rows, plain: true));
        // Powers of ten first, as they are the ones to keep where two would share a row.
        foreach (var value in LogTicks.Major(window.Low, window.High).OrderBy(v => Math.Abs(Math.Log10(v) - Math.Round(Math.Log10(v))) > 1e-9))
        {
            var text = PlotText.Number(value, glyphs.Thousands);
            labels[scale.Row(value)] ??= text.Length <= LabelColumns ? text : value.ToString("0.#E+0", CultureInfo.InvariantCulture);
        }

        return labels;
    }

    /// <summary>The dose axis and its labels.</summary>
    private static string[] Foot(DoseWindow window, int margin, int width, ChartGlyphs glyphs)
    {
        const string title = "dose, %";
        var columns = width - margin;
        var axis = new CharGrid(columns, 1, plain: true);
        var numbers = new CharGrid(width, 1, plain: true);
        axis.Write(0, 0, new string(glyphs.Across, columns));
        var free = 0;
        foreach (var dose in RoundSteps.Between(0, window.Dose, columns / 8))
        {
            var column = new ChartScale(window, axis).Column(dose);
            var text = dose.ToString("0.######", CultureInfo.InvariantCulture);
            var from = Math.Max(0, margin + column - (text.Length / 2));
            axis.Put(column, 0, glyphs.AcrossTick);
            if (from >= free && from + text.Length < width - title.Length)
            {
                numbers.Write(from, 0, text);
                free = from + text.Length + 1;
            }
        }

        numbers.Write(width - title.Length, 0, title);
        return [new string(' ', margin - 1) + glyphs.Corner + axis.Row(0), numbers.Row(0)];
    }
}
