using OxyPlot;
using OxyPlot.Series;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>The series that pictures are made of; points go in as (x, mPa·s).</summary>
internal static class RunTraces
{
    private static readonly OxyColor Nothing = OxyColors.Undefined;

    /// <summary>The region between two edges.</summary>
    public static AreaSeries Band(string? title, IEnumerable<(double X, Estimate Edge)> samples, OxyColor fill, LineStyle edges)
    {
        var series = new AreaSeries
        {
            Title = title,
            Fill = fill,
            Color = edges == LineStyle.None ? Nothing : OxyColor.FromAColor(0xFF, fill),
            LineStyle = edges,
            StrokeThickness = 1,
            RenderInLegend = title is not null,
        };
        foreach (var (x, edge) in samples)
        {
            series.Points.Add(new(x, edge.Low.MilliPascalSeconds));
            series.Points2.Add(new(x, edge.High.MilliPascalSeconds));
        }

        return series;
    }

    /// <summary>A line through points.</summary>
    public static LineSeries Line(string? title, IEnumerable<DataPoint> points, OxyColor color, LineStyle style, double thickness = 2)
    {
        var series = new LineSeries { Title = title, Color = color, LineStyle = style, StrokeThickness = thickness, RenderInLegend = title is not null };
        series.Points.AddRange(points);
        return series;
    }

    /// <summary>Marks without a line.</summary>
    public static LineSeries Marks(string? title, IEnumerable<DataPoint> points, int shape, OxyColor fill, OxyColor edge)
    {
        var series = Line(title, points, Nothing, LineStyle.None);
        Mark(series, shape, fill, edge);
        return series;
    }

    /// <summary>Upright bars with caps, for intervals that are not even about their middle.</summary>
    public static IEnumerable<LineSeries> Bars(IEnumerable<(double X, Estimate Value)> values, OxyColor color) => values.Select(v =>
    {
        var series = Line(null, [new(v.X, v.Value.Low.MilliPascalSeconds), new(v.X, v.Value.High.MilliPascalSeconds)], color, LineStyle.Solid, 1.4);
        series.MarkerType = MarkerType.Custom;
        series.MarkerOutline = [new(-1, -0.1), new(1, -0.1), new(1, 0.1), new(-1, 0.1)];
        series.MarkerSize = PlotStyle.MarkerSize;
        series.MarkerFill = color;
        return series;
    });

    /// <summary>Readings filled, doubted ones open and crossed.</summary>
    public static IEnumerable<LineSeries> Readings(IReadOnlyList<PicturedReading> readings, Func<PicturedReading, DataPoint> place, int shape, OxyColor color, bool titled)
    {
        var sound = readings.Where(r => !r.Doubted).Select(place).ToList();
        var doubted = readings.Where(r => r.Doubted).Select(place).ToList();
        if (sound.Count > 0)
        {
            yield return Marks(titled ? "reading" : null, sound, shape, color, OxyColors.White);
        }

        if (doubted.Count > 0)
        {
            yield return Doubted(titled, doubted, shape, color);
        }
    }

    private static CrossedMarks Doubted(bool titled, List<DataPoint> points, int shape, OxyColor color)
    {
        var series = new CrossedMarks { Title = titled ? "doubted reading" : null, RenderInLegend = titled, Color = Nothing, LineStyle = LineStyle.None };
        Mark(series, shape, OxyColors.White, color);
        series.Points.AddRange(points);
        return series;
    }

    /// <summary>Gives a line its marks.</summary>
    /// <param name="series">The line.</param>
    /// <param name="shape">The place in the order of shapes.</param>
    /// <param name="fill">Inside.</param>
    /// <param name="edge">Outline.</param>
    public static void Mark(LineSeries series, int shape, OxyColor fill, OxyColor edge)
    {
        series.MarkerType = PlotStyle.ShapeOf(shape);
        series.MarkerOutline = PlotStyle.OutlineOf(shape);
        series.MarkerSize = PlotStyle.MarkerSize;
        series.MarkerFill = fill;
        series.MarkerStroke = edge;
        series.MarkerStrokeThickness = edge == OxyColors.White ? 0.8 : 1.4;
    }
}
