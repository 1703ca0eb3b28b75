using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;

namespace Viscolog.Plots.Oxy;

/// <summary>Adds the elements of one panel to a model.</summary>
/// <param name="model">The model.</param>
/// <param name="panel">The panel.</param>
/// <param name="up">The key of its axis up.</param>
/// <param name="across">The key of its axis across.</param>
internal sealed class OxyPanel(PlotModel model, Panel panel, string up, string across)
{
    /// <summary>Strips across and up in the region where two values are in their bands.</summary>
    private const int Strips = 120;

    private static readonly DataPoint[] Nowhere = [DataPoint.Undefined];

    private readonly int _runs = panel.Elements.Max(e => e.Of + 1) ?? 1;

    public static void Add(PlotModel model, Panel panel, string up, string across)
    {
        var made = new OxyPanel(model, panel, up, across);
        if (panel.Elements.OfType<Element.InBand>().ToArray() is { Length: > 1 } bands)
        {
            made.AddShared(bands);
        }

        foreach (var element in panel.Elements)
        {
            made.Add(element);
        }

        // The last, so that nothing is drawn over a label.
        made.Add(new PanelLabels(panel), AnnotationLayer.AboveSeries);
    }

    private void Add(Element element)
    {
        switch (element)
        {
            case Element.Line line:
                Add(Stroke(line, line.Points.Select(Point)));
                break;
            case Element.Level level:
                Add(Stroke(level, [new(Across.Minimum, level.Y), new(Across.Maximum, level.Y)]));
                break;
            case Element.Area area:
                AddArea(area);
                break;
            case Element.Bars bars:
                AddBars(bars);
                break;
            case Element.Marks marks:
                AddMarks(marks);
                break;
            case Element.RunKey run:
                AddKey(run);
                break;
            case Element.Contours contours:
                AddContours(contours, contours.Field, contours.Levels);
                break;
            case Element.InBand band:
                AddContours(band, band.Field, [Math.Max(band.Low, 1e-3), band.High]);
                break;
            default:
                AddAnnotation(element);
                break;
        }
    }

    private void AddAnnotation(Element element)
    {
        switch (element)
        {
            case Element.Target target:
                Add(new TargetBand(target), AnnotationLayer.BelowSeries);
                AddEntry(target);
                break;
            case Element.Limit limit:
                Add(new LimitRegion(limit), AnnotationLayer.BelowSeries);
                AddEntry(limit);
                break;
            case Element.Arrow arrow:
                Add(new AdditionArrow(arrow), AnnotationLayer.AboveSeries);
                AddEntry(arrow);
                break;
            case Element.Ends ends:
                Add(new EndLabels(ends, panel.Across.High * 1.03), AnnotationLayer.AboveSeries);
                break;
            case Element.Words:
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(element), element, "not a case of the closed set");
        }
    }

    private OxyPlot.Axes.Axis Across => model.Axes.First(a => a.Key == across);

    private static DataPoint Point(Spot spot) => new(spot.X, spot.Y);

    private void Add(XYAxisSeries series)
    {
        (series.XAxisKey, series.YAxisKey) = (across, up);
        model.Series.Add(series);
    }

    private void Add(Annotation annotation, AnnotationLayer layer)
    {
        (annotation.XAxisKey, annotation.YAxisKey, annotation.Layer) = (across, up, layer);
        model.Annotations.Add(annotation);
    }

    private static LineSeries Stroke(Element element, IEnumerable<DataPoint> points)
    {
        var (color, dash, width) = Looks.Pen(element.Meaning, element.Of);
        return Titled(new LineSeries { Color = color, LineStyle = dash, StrokeThickness = width }, element, points);
    }

    private static LineSeries Titled(LineSeries series, Element element, IEnumerable<DataPoint> points)
    {
        series.Title = element.Key?.Full is { } full ? OxyPicture.Literal(full) : null;
        series.RenderInLegend = series.Title is not null;
        series.Points.AddRange(points);
        return series;
    }

    /// <summary>The legend's line of an element that is no series.</summary>
    private void AddEntry(Element element)
    {
        if (element.Key?.Full is not null)
        {
            Add(Stroke(element, Nowhere));
        }
    }

    private void AddArea(Element.Area area)
    {
        var (fill, edges) = Looks.Region(area.Meaning, area.Of, _runs);
        var series = new AreaSeries
        {
            Title = area.Key?.Full,
            Fill = fill,
            Color = edges == LineStyle.None ? OxyColors.Undefined : OxyColor.FromAColor(0xFF, fill),
            LineStyle = edges,
            StrokeThickness = 1,
            RenderInLegend = area.Key?.Full is not null,
        };
        series.Points.AddRange(area.Spans.Select(s => new DataPoint(s.X, s.Low)));
        series.Points2.AddRange(area.Spans.Select(s => new DataPoint(s.X, s.High)));
        Add(series);
    }

    /// <summary>With caps, for intervals that are not even about their middle.</summary>
    private void AddBars(Element.Bars bars)
    {
        foreach (var (x, low, high) in bars.Spans)
        {
            Add(new LineSeries
            {
                Points = { new(x, low), new(x, high) },
                Color = Looks.Color(bars.Of),
                LineStyle = LineStyle.Solid,
                StrokeThickness = 1.4,
                RenderInLegend = false,
                MarkerType = MarkerType.Custom,
                MarkerOutline = [new(-1, -0.1), new(1, -0.1), new(1, 0.1), new(-1, 0.1)],
                MarkerSize = Face.UsualSize,
                MarkerFill = Looks.Color(bars.Of),
            });
        }
    }

    /// <summary>Doubted ones are crossed. Without places, a line of the legend.</summary>
    private void AddMarks(Element.Marks marks)
    {
        if (!marks.Points.IsEmpty || marks.Key?.Full is not null)
        {
            var series = marks.Meaning == Meaning.Doubted ? new CrossedMarks() : new LineSeries();
            (series.Color, series.LineStyle, series.StrokeThickness) = (OxyColors.Undefined, LineStyle.None, 2);
            Mark(series, Looks.Face(marks.Meaning, marks.Of));
            Add(Titled(series, marks, marks.Points.Select(Point).DefaultIfEmpty(DataPoint.Undefined)));
        }
    }

    private static void Mark(LineSeries series, Face face)
    {
        series.MarkerType = Looks.Shape(face.Shape);
        series.MarkerOutline = Looks.Outline(face.Shape);
        series.MarkerSize = face.Size;
        series.MarkerFill = face.Fill;
        series.MarkerStroke = face.Edge;
        series.MarkerStrokeThickness = face.EdgeWidth;
    }

    private void AddKey(Element.RunKey run)
    {
        var pen = run.Look == KeyLook.LineAndMark ? Looks.Pen(Meaning.Median, run.Place) : new(OxyColors.Undefined, LineStyle.None, 2);
        var series = Titled(new LineSeries { Color = pen.Color, LineStyle = pen.Dash, StrokeThickness = pen.Width }, run, Nowhere);
        if (run.Look != KeyLook.Nothing)
        {
            Mark(series, Looks.Face(Meaning.Reading, run.Place));
        }

        Add(series);
    }

    private void AddContours(Element element, Field field, IEnumerable<double> levels)
    {
        var (color, dash, width) = Looks.Pen(element.Meaning, element.Of);
        var data = new double[field.Across.Length, field.Up.Length];
        for (var i = 0; i < field.Across.Length; i++)
        {
            for (var j = 0; j < field.Up.Length; j++)
            {
                data[i, j] = field.Ln(i, j);
            }
        }

        foreach (var level in levels)
        {
            Add(new ContourSeries
            {
                ColumnCoordinates = [.. field.Across],
                RowCoordinates = [.. field.Up],
                Data = data,
                ContourLevels = [Math.Log(level)],
                Color = color,
                LineStyle = dash,
                StrokeThickness = width,
            });
        }

        AddEntry(element);
    }

    /// <summary>Where all values are in band, hatched by level strips.</summary>
    private void AddShared(Element.InBand[] bands)
    {
        var (width, height) = (panel.Across.High, panel.Up.High);
        for (var row = 0; row < Strips; row += 2)
        {
            var y = height * (row + 0.5) / Strips;
            double? from = null;
            for (var column = 0; column <= Strips; column++)
            {
                var x = width * (column + 0.5) / Strips;
                var inside = column < Strips && Array.TrueForAll(bands, b => b.Holds(x, y));
                from = inside ? from ?? x : from;
                if (!inside && from is { } start)
                {
                    Add(Strip(start, x, y, 0.5 * height / Strips), AnnotationLayer.BelowSeries);
                    from = null;
                }
            }
        }
    }

    private static RectangleAnnotation Strip(double left, double right, double middle, double half) => new()
    {
        MinimumX = left,
        MaximumX = right,
        MinimumY = middle - half,
        MaximumY = middle + half,
        Fill = OxyColor.FromAColor(0x80, Looks.Target),
    };
}

/// <summary>Marks with a cross over each, in the plot and in the legend.</summary>
internal sealed class CrossedMarks : LineSeries
{
    /// <summary>Half the width of the cross.</summary>
    public const double Reach = 7.5;

    public override void Render(IRenderContext rc)
    {
        base.Render(rc);
        foreach (var point in Points)
        {
            Cross(rc, this.Transform(point.X, point.Y));
        }
    }

    public override void RenderLegend(IRenderContext rc, OxyRect legendBox)
    {
        base.RenderLegend(rc, legendBox);
        Cross(rc, legendBox.Center);
    }

    private static void Cross(IRenderContext rc, ScreenPoint p)
    {
        Stroke(rc, new(p.X - Reach, p.Y - Reach), new(p.X + Reach, p.Y + Reach));
        Stroke(rc, new(p.X - Reach, p.Y + Reach), new(p.X + Reach, p.Y - Reach));
    }

    private static void Stroke(IRenderContext rc, ScreenPoint a, ScreenPoint b)
        => rc.DrawLine([a, b], Looks.Ink, 1.6, EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
}
