using System.Globalization;
using Viscolog.Core.Flow;

namespace Viscolog.Plots;

/// <summary>A flow curve drawn in characters: viscosity over rate, then stress over rate, on logarithmic scales.</summary>
internal static class FlowChart
{
    private const int LabelColumns = 9;

    /// <summary>Draws both.</summary>
    /// <param name="picture">The curve.</param>
    /// <param name="width">Columns, at least 40; no line is longer.</param>
    /// <param name="height">Lines of each.</param>
    /// <param name="ascii">Whether only characters from 0x20 to 0x7E may be used.</param>
    public static IReadOnlyList<string> Draw(FlowPicture picture, int width, int height, bool ascii)
    {
        var glyphs = ascii ? ChartGlyphs.Plain : ChartGlyphs.Rich;
        FlowPoint[] all = [.. picture.Points, .. picture.Others];
        return
        [
            .. Panel("viscosity, Pa.s", picture, all, p => p.Viscosity.MilliPascalSeconds / 1000, c => c.Value.Median.MilliPascalSeconds / 1000, width, height, glyphs),
            "",
            .. Panel("stress, Pa", picture, all, p => p.Stress.Pascals, c => c.At.Rate.PerSecond * c.Value.Median.MilliPascalSeconds / 1000, width, height, glyphs),
            Legend(picture, glyphs),
        ];
    }

    private static string Legend(FlowPicture picture, ChartGlyphs glyphs)
        => $"{glyphs.Reading} read{(picture.Others.IsEmpty ? "" : $"  {glyphs.Settled} read on the way up")}{(picture.Curve.IsEmpty ? "" : $"  {glyphs.Median} laws, mean by weight")}";

    private static IEnumerable<string> Panel(
        string title, FlowPicture picture, FlowPoint[] all, Func<FlowPoint, double> ofPoint, Func<RateViscosity, double> ofCurve, int width, int height, ChartGlyphs glyphs)
    {
        var across = Window(all.Select(p => p.Rate.PerSecond));
        var up = Window(all.Select(ofPoint));
        var labels = Labels(up, height - 3, glyphs);
        var margin = labels.Max(l => l?.Length ?? 0) + 1;
        var grid = new CharGrid(width - margin, labels.Length, glyphs.IsPlain);
        foreach (var sample in picture.Curve)
        {
            grid.Dot(Place(sample.At.Rate.PerSecond, across, grid.DotColumns), grid.DotRows - 1 - Place(ofCurve(sample), up, grid.DotRows), '*');
        }

        foreach (var (points, mark) in new[] { (picture.Others, glyphs.Settled), (picture.Points, glyphs.Reading) })
        {
            foreach (var point in points)
            {
                grid.Put(Place(point.Rate.PerSecond, across, grid.Columns), grid.Rows - 1 - Place(ofPoint(point), up, grid.Rows), mark);
            }
        }

        yield return glyphs.Show(title);
        for (var row = 0; row < labels.Length; row++)
        {
            yield return ((labels[row] ?? "").PadLeft(margin - 1) + (labels[row] is null ? glyphs.Upright : glyphs.Tick) + grid.Row(row)).TrimEnd();
        }

        foreach (var line in Foot(across, margin, width, glyphs))
        {
            yield return line;
        }
    }

    private static (double Low, double High) Window(IEnumerable<double> values)
    {
        double[] all = [.. values];
        var pad = Math.Max(0.04 * Math.Log(all.Max() / all.Min()), 0.05);
        return (all.Min() * Math.Exp(-pad), all.Max() * Math.Exp(pad));
    }

    private static int Place(double value, (double Low, double High) window, int count)
        => (int)Math.Clamp(Math.Round(Math.Log(value / window.Low) / Math.Log(window.High / window.Low) * (count - 1)), -1, count);

    private static string?[] Labels((double Low, double High) window, int rows, ChartGlyphs glyphs)
    {
        var labels = new string?[rows];
        foreach (var value in LogTicks.Major(window.Low, window.High).OrderBy(v => Math.Abs(Math.Log10(v) - Math.Round(Math.Log10(v))) > 1e-9))
        {
            var text = PlotText.Number(value, glyphs.Thousands);
            labels[rows - 1 - Place(value, window, rows)] ??= text.Length <= LabelColumns ? text : value.ToString("0.#E+0", CultureInfo.InvariantCulture);
        }

        return labels;
    }

    private static string[] Foot((double Low, double High) window, int margin, int width, ChartGlyphs glyphs)
    {
        const string title = "rate, 1/s";
        var columns = width - margin;
        var axis = new CharGrid(columns, 1, plain: true);
        var numbers = new CharGrid(width, 1, plain: true);
        axis.Write(0, 0, new string(glyphs.Across, columns));
        var free = 0;
        foreach (var value in LogTicks.Major(window.Low, window.High))
        {
            var column = Place(value, window, columns);
            var text = PlotText.Number(value, glyphs.Thousands);
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
