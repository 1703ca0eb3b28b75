using Viscolog.Core.Flow;

namespace Viscolog.Plots;

/// <summary>A flow curve drawn in characters: viscosity over rate, then stress over rate, on logarithmic scales.</summary>
internal static class FlowChart
{
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
        var across = Axis("rate, 1/s", all.Select(p => p.Rate.PerSecond));
        return CharPanel.Draw(glyphs.Show(title), across, Axis("", all.Select(ofPoint)), width, height, glyphs, plane =>
        {
            foreach (var sample in picture.Curve)
            {
                plane.Grid.Dot(plane.DotColumn(sample.At.Rate.PerSecond), plane.DotRow(ofCurve(sample)), '*');
            }

            foreach (var (points, mark) in new[] { (picture.Others, glyphs.Settled), (picture.Points, glyphs.Reading) })
            {
                foreach (var point in points)
                {
                    plane.Put(point.Rate.PerSecond, ofPoint(point), mark);
                }
            }
        });
    }

    private static CharAxis Axis(string title, IEnumerable<double> values)
    {
        double[] all = [.. values];
        var pad = Math.Max(0.04 * Math.Log(all.Max() / all.Min()), 0.05);
        return new(title, all.Min() * Math.Exp(-pad), all.Max() * Math.Exp(pad), IsLogarithmic: true);
    }
}
