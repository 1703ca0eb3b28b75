using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>A control chart drawn in characters: values above, moving ranges below.</summary>
internal static class TrendChart
{
    /// <summary>Part of the lines that the values get; the moving ranges have the rest.</summary>
    private const double ValuesPart = 0.58;

    /// <summary>In fewer lines the moving ranges are left to the words beside the chart.</summary>
    private const int LeastForBoth = 13;

    /// <summary>Lines of the axis across, which the lower panel has for both.</summary>
    private const int FootLines = 2;

    /// <summary>Draws both panels, or the values alone where there is little room.</summary>
    /// <param name="picture">The chart.</param>
    /// <param name="width">Columns, at least 38; no line is longer.</param>
    /// <param name="height">Lines of all, at least 7.</param>
    /// <param name="ascii">Whether only characters from 0x20 to 0x7E may be used.</param>
    public static IReadOnlyList<string> Draw(TrendPicture picture, int width, int height, bool ascii)
    {
        var glyphs = ascii ? ChartGlyphs.Plain : ChartGlyphs.Rich;
        var legend = PlainText.Shorten(Legend(picture, glyphs), width, glyphs.Ellipsis);
        if (height < LeastForBoth)
        {
            return [.. Values(picture, width, height - 1, glyphs), legend];
        }

        var upper = (int)Math.Round(ValuesPart * (height - 1));
        string[] values = [.. Values(picture, width, upper + FootLines, glyphs).SkipLast(FootLines)];
        var margin = 1 + values[1].IndexOfAny([glyphs.Upright, glyphs.Tick]);
        return [.. values, .. Ranges(picture, width, height - 1 - upper, glyphs, margin), legend];
    }

    private static string Legend(TrendPicture picture, ChartGlyphs glyphs)
    {
        var wanted = picture.Chart.Low is null && picture.Chart.High is null ? "" : $"  {glyphs.Interval} wanted";
        return $"{glyphs.Reading} batch  {glyphs.Doubted} signal  {glyphs.Across} mean  {glyphs.Target} limit{wanted}";
    }

    private static IEnumerable<string> Values(TrendPicture picture, int width, int height, ChartGlyphs glyphs)
    {
        var chart = picture.Chart;
        var (low, high) = picture.Window();
        return CharPanel.Draw(glyphs.Show(picture.Quantity), Across(picture), new("", low, high, picture.IsLog), width, height, glyphs, plane =>
        {
            foreach (var wanted in new[] { chart.Low, chart.High }.OfType<double>())
            {
                plane.Level(wanted, glyphs.Interval);
            }

            plane.Level(chart.Lower, glyphs.Target);
            plane.Level(chart.Upper, glyphs.Target);
            plane.Level(chart.Mean, glyphs.Across);
            for (var i = 0; i < chart.Points.Length; i++)
            {
                plane.Put(i + 1, chart.Points[i].Value, picture.HasSignal(i) ? glyphs.Doubted : glyphs.Reading);
            }
        });
    }

    private static IEnumerable<string> Ranges(TrendPicture picture, int width, int height, ChartGlyphs glyphs, int margin)
    {
        var chart = picture.Chart;
        return CharPanel.Draw(glyphs.Show(picture.RangeQuantity), Across(picture), new("", 0, picture.GreatestRange(), IsLogarithmic: false), width, height, glyphs, plane =>
        {
            plane.Level(picture.ShownRange(chart.MovingRangeUpper), glyphs.Target);
            plane.Level(picture.ShownRange(chart.MovingRangeMean), glyphs.Across);
            for (var i = 0; i < chart.Points.Length; i++)
            {
                if (chart.MovingRanges[i] is { } range)
                {
                    plane.Put(i + 1, picture.ShownRange(range), chart.RangeSignals.Contains(i) ? glyphs.Doubted : glyphs.Reading);
                }
            }
        }, margin);
    }

    private static CharAxis Across(TrendPicture picture) => new("batch", 0.5, picture.Chart.Points.Length + 0.5, IsLogarithmic: false) { CountsPlaces = true };
}
