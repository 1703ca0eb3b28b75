using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using Viscolog.Core.Advising;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The map of two doses: contours of body, the bands of body and string, the path so far, the next addition and the end of the plan.</summary>
internal static class PairMapPlot
{
    private static readonly OxyColor StringInk = OxyColor.FromRgb(0x8E, 0x3B, 0x6B);

    public static PlotModel Build(PairPicture picture)
    {
        var model = PlotFrame.Create(picture.Name ?? "Run without a name", $"contours: body at {PlotText.Celsius(picture.ReferenceTemperature)}, {PlotText.Unit} · medians as believed now");
        AddAxis(model, AxisPosition.Bottom, picture.BodyThickener, picture.Map.BodyDoses[^1].Percent);
        AddAxis(model, AxisPosition.Left, picture.StringThickener, picture.Map.StringDoses[^1].Percent);
        AddBoth(model, picture);
        AddContours(model, picture);
        AddPath(model, picture);
        return model;
    }

    private static void AddAxis(PlotModel model, AxisPosition position, string thickener, double end)
    {
        var axis = PlotFrame.Styled(new LinearAxis { Position = position, Minimum = -0.02 * end, Maximum = end });
        axis.Title = PlotFrame.Literal($"Dose of {PlainText.Shorten(PlainText.Clean(thickener), 24)}, g per 100 g of base (%)");
        model.Axes.Add(axis);
    }

    /// <summary>Where both medians are in band, hatched by level strips.</summary>
    private static void AddBoth(PlotModel model, PairPicture picture)
    {
        if (picture is not { Target: { } band, TargetString: { } strings })
        {
            return;
        }

        const int fine = 120;
        var map = new PairField(picture.Map);
        var (width, height) = (picture.Map.BodyDoses[^1].Percent, picture.Map.StringDoses[^1].Percent);
        for (var row = 0; row < fine; row += 2)
        {
            var y = height * (row + 0.5) / fine;
            double? from = null;
            for (var column = 0; column <= fine; column++)
            {
                var x = width * (column + 0.5) / fine;
                var (body, length) = map.At(x, y);
                var inside = column < fine && body >= band.Low.MilliPascalSeconds && body <= band.High.MilliPascalSeconds && length >= strings.Low.Millimeters && length <= strings.High.Millimeters;
                from = inside ? from ?? x : from;
                if (!inside && from is { } start)
                {
                    model.Annotations.Add(new RectangleAnnotation
                    {
                        MinimumX = start,
                        MaximumX = x,
                        MinimumY = y - (0.5 * height / fine),
                        MaximumY = y + (0.5 * height / fine),
                        Fill = OxyColor.FromAColor(0x80, PlotStyle.Target),
                        Layer = AnnotationLayer.BelowSeries,
                    });
                    from = null;
                }
            }
        }
    }

    private static void AddContours(PlotModel model, PairPicture picture)
    {
        var (low, high) = (picture.Map.Bodies.Min(b => b.MilliPascalSeconds), picture.Map.Bodies.Max(b => b.MilliPascalSeconds));
        Contour(model, picture, "body", PlotStyle.Limit, LineStyle.Dot, 1, v => Math.Log(picture.Map.Bodies[v].MilliPascalSeconds), LogTicks.Major(low, high));
        if (picture.Target is { } band)
        {
            Contour(model, picture, "edges of the body's band", PlotStyle.Target, LineStyle.Solid, 2.2, v => Math.Log(picture.Map.Bodies[v].MilliPascalSeconds), [band.Low.MilliPascalSeconds, band.High.MilliPascalSeconds]);
        }

        if (picture.TargetString is { } strings)
        {
            Contour(model, picture, "edges of the string's band, mm", StringInk, LineStyle.Dash, 2.2, v => Math.Log(picture.Map.Lengths[v].Millimeters), [Math.Max(strings.Low.Millimeters, 1e-3), strings.High.Millimeters]);
        }
    }

    private static void Contour(PlotModel model, PairPicture picture, string title, OxyColor color, LineStyle style, double thickness, Func<int, double> ln, IReadOnlyList<double> levels)
    {
        var (columns, rows) = (picture.Map.BodyDoses.Length, picture.Map.StringDoses.Length);
        var data = new double[columns, rows];
        for (var i = 0; i < columns; i++)
        {
            for (var j = 0; j < rows; j++)
            {
                data[i, j] = ln((j * columns) + i);
            }
        }

        foreach (var level in levels)
        {
            model.Series.Add(new ContourSeries
            {
                ColumnCoordinates = [.. picture.Map.BodyDoses.AsEnumerable().Select(d => d.Percent)],
                RowCoordinates = [.. picture.Map.StringDoses.AsEnumerable().Select(d => d.Percent)],
                Data = data,
                ContourLevels = [Math.Log(level)],
                Color = color,
                LineStyle = style,
                StrokeThickness = thickness,
            });
            Label(model, picture.Map, data, level, color);
        }

        model.Series.Add(RunTraces.Line(title, [DataPoint.Undefined], color, style, thickness));
    }

    /// <summary>A line's number where it first crosses one of a few levels or uprights of the map.</summary>
    private static void Label(PlotModel model, PairMap map, double[,] ln, double level, OxyColor color)
    {
        var (columns, rows) = (ln.GetLength(0), ln.GetLength(1));
        foreach (var row in new[] { rows / 12, rows / 3, 2 * rows / 3, rows - 2 })
        {
            for (var i = 1; i < columns; i++)
            {
                if ((ln[i - 1, row] < Math.Log(level)) != (ln[i, row] < Math.Log(level)))
                {
                    Write(map.BodyDoses[i].Percent, map.StringDoses[row].Percent);
                    return;
                }
            }
        }

        foreach (var column in new[] { columns / 12, columns / 2, columns - 2 })
        {
            for (var j = 1; j < rows; j++)
            {
                if ((ln[column, j - 1] < Math.Log(level)) != (ln[column, j] < Math.Log(level)))
                {
                    Write(map.BodyDoses[column].Percent, map.StringDoses[j].Percent);
                    return;
                }
            }
        }

        void Write(double x, double y) => model.Annotations.Add(new TextAnnotation
        {
            Text = PlotText.Number(level),
            TextPosition = new DataPoint(x, y),
            TextColor = color,
            Background = OxyColor.FromAColor(0xE0, OxyColors.White),
            StrokeThickness = 0,
            FontSize = PlotStyle.TextSize - 1,
            TextHorizontalAlignment = HorizontalAlignment.Center,
            TextVerticalAlignment = VerticalAlignment.Middle,
            Layer = AnnotationLayer.AboveSeries,
        });
    }

    private static void AddPath(PlotModel model, PairPicture picture)
    {
        static DataPoint At(PairPlace place) => new(place.Body.Percent, place.Second.Percent);
        var path = RunTraces.Line("path so far", picture.Path.Select(p => At(p.Place)), PlotStyle.Ink, LineStyle.Solid, 2);
        RunTraces.Mark(path, 0, PlotStyle.Ink, OxyColors.White);
        model.Series.Add(path);
        if (picture.End is { } end)
        {
            var plan = RunTraces.Line("the plan's end", [At(picture.Next ?? picture.Path[^1].Place), At(end)], PlotStyle.Next, LineStyle.Dot, 1.6);
            model.Series.Add(plan);
            model.Series.Add(RunTraces.Marks(null, [At(end)], 3, OxyColors.White, PlotStyle.Next));
        }

        if (picture.Next is { } next)
        {
            model.Annotations.Add(new ArrowAnnotation
            {
                StartPoint = At(picture.Path[^1].Place),
                EndPoint = At(next),
                Color = PlotStyle.Next,
                StrokeThickness = 3,
                HeadLength = 5,
                HeadWidth = 2.6,
                Layer = AnnotationLayer.AboveSeries,
            });
            model.Series.Add(RunTraces.Line("next addition", [DataPoint.Undefined], PlotStyle.Next, LineStyle.Solid, 3));
        }
    }
}
