using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using Viscolog.Core.Checking;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>A control chart: values with limits, zones and signals above, moving ranges below.</summary>
internal static class TrendPlot
{
    private const string Upper = "values";
    private const string Lower = "ranges";
    private const int MostLabels = 12;
    private const int BatchColumns = 10;

    public static PlotModel Build(TrendPicture picture)
    {
        var chart = picture.Chart;
        var model = PlotFrame.Create(picture.Title, Subtitle(picture));
        model.Axes.Add(Across(chart));
        var (low, high) = picture.Window();
        Axis values = picture.IsLog
            ? PlotFrame.Styled(new ViscosityAxis { Minimum = low, Maximum = high })
            : PlotFrame.Styled(new LinearAxis { Minimum = low, Maximum = high, LabelFormatter = v => v < 0 ? "-" + PlotText.Number(-v) : PlotText.Number(v) });
        model.Axes.Add(Placed(values, Upper, picture.Quantity, 0.4, 1));
        model.Axes.Add(Placed(PlotFrame.Styled(new LinearAxis { Minimum = 0, Maximum = picture.GreatestRange() }), Lower, picture.RangeQuantity, 0, 0.33));
        AddLevels(model, picture);
        AddValues(model, picture);
        AddRanges(model, picture);
        return model;
    }

    private static string Subtitle(TrendPicture picture)
    {
        var chart = picture.Chart;
        var left = chart.LeftOut.IsEmpty ? "" : $", without {string.Join(", ", chart.LeftOut)}";
        var capability = chart.Cpk is { } cpk ? FormattableString.Invariant($" · Cpk {cpk.Index:0.00} ({cpk.Low:0.00} to {cpk.High:0.00})") : "";
        return PlainText.Clean(FormattableString.Invariant($"limits from {chart.InBaseline} batches{left} · {(picture.IsLog ? "log" : "linear")} scale{capability}"));
    }

    private static LinearAxis Across(ControlChart chart)
    {
        var count = chart.Points.Length;
        var every = Math.Max(1, (int)Math.Ceiling(count / (double)MostLabels));
        var axis = PlotFrame.Styled(new LinearAxis
        {
            Position = AxisPosition.Bottom,
            Minimum = 0.4,
            Maximum = count + 0.6,
            MajorStep = every,
            MinorStep = every,
            LabelFormatter = v => Math.Abs(v - Math.Round(v)) < 1e-6 && v >= 1 && v <= count ? Named(chart, (int)Math.Round(v) - 1) : "",
        });
        axis.Title = "Batch";
        axis.MajorGridlineStyle = LineStyle.None;
        return axis;
    }

    private static string Named(ControlChart chart, int place) => PlotFrame.Literal(PlainText.Shorten(PlainText.Clean(chart.Points[place].Batch), BatchColumns));

    private static Axis Placed(Axis axis, string key, string title, double from, double to)
    {
        (axis.Position, axis.Key, axis.Title, axis.StartPosition, axis.EndPosition) = (AxisPosition.Left, key, PlotFrame.Literal(title), from, to);
        axis.MajorGridlineStyle = LineStyle.None;
        return axis;
    }

    private static void AddLevels(PlotModel model, TrendPicture picture)
    {
        var chart = picture.Chart;
        var end = chart.Points.Length + 0.6;
        foreach (var zone in (double[])[-2, -1, 1, 2])
        {
            model.Series.Add(Level(null, Upper, end, chart.Level(zone), PlotStyle.Grid, LineStyle.Solid, 1));
        }

        model.Series.Add(Level("mean", Upper, end, chart.Mean, PlotStyle.Curve, LineStyle.Solid, 1.4));
        model.Series.Add(Level("limits", Upper, end, chart.Upper, PlotStyle.Next, LineStyle.Dash, 1.6));
        model.Series.Add(Level(null, Upper, end, chart.Lower, PlotStyle.Next, LineStyle.Dash, 1.6));
        foreach (var (wanted, i) in new[] { chart.Low, chart.High }.OfType<double>().Select((v, i) => (v, i)))
        {
            model.Series.Add(Level(i == 0 ? "wanted" : null, Upper, end, wanted, PlotStyle.Target, LineStyle.DashDot, 1.6));
        }

        model.Series.Add(Level(null, Lower, end, picture.ShownRange(chart.MovingRangeMean), PlotStyle.Curve, LineStyle.Solid, 1.4));
        model.Series.Add(Level(null, Lower, end, picture.ShownRange(chart.MovingRangeUpper), PlotStyle.Next, LineStyle.Dash, 1.6));
        if (chart.BaselineCount < chart.Points.Length)
        {
            model.Annotations.Add(new LineAnnotation
            {
                Type = LineAnnotationType.Vertical,
                X = chart.BaselineCount + 0.5,
                YAxisKey = Upper,
                Color = PlotStyle.Limit,
                LineStyle = LineStyle.Dot,
                Text = "baseline ends ",
                TextOrientation = AnnotationTextOrientation.Horizontal,
                TextHorizontalAlignment = HorizontalAlignment.Right,
                TextVerticalAlignment = VerticalAlignment.Bottom,
                TextLinePosition = 0.02,
                TextColor = PlotStyle.Limit,
                FontSize = PlotStyle.TextSize,
            });
        }
    }

    private static LineSeries Level(string? title, string axis, double end, double value, OxyColor color, LineStyle style, double thickness)
    {
        var line = RunTraces.Line(title, [new(0.4, value), new(end, value)], color, style, thickness);
        line.YAxisKey = axis;
        return line;
    }

    private static void AddValues(PlotModel model, TrendPicture picture)
    {
        var points = picture.Chart.Points.Select((p, i) => new DataPoint(i + 1, p.Value)).ToList();
        Add(model, Upper, RunTraces.Line(null, points, PlotStyle.Limit, LineStyle.Solid, 1));
        Add(model, Upper, RunTraces.Marks("batch", points, 0, PlotStyle.Ink, OxyColors.White));
        var signals = points.Where((_, i) => picture.HasSignal(i)).ToList();
        if (signals.Count > 0)
        {
            var marks = RunTraces.Marks("signal", signals, 1, OxyColors.White, PlotStyle.Next);
            marks.MarkerStrokeThickness = 2.2;
            Add(model, Upper, marks);
            foreach (var place in picture.Chart.Signals.Select(s => s.Place).Distinct())
            {
                model.Annotations.Add(new TextAnnotation
                {
                    Text = Named(picture.Chart, place),
                    TextPosition = points[place],
                    YAxisKey = Upper,
                    Stroke = OxyColors.Undefined,
                    TextColor = PlotStyle.Ink,
                    FontSize = PlotStyle.TextSize,
                    TextVerticalAlignment = picture.Chart.Away[place] > 0 ? VerticalAlignment.Bottom : VerticalAlignment.Top,
                    Offset = new(0, picture.Chart.Away[place] > 0 ? -7 : 7),
                });
            }
        }
    }

    private static void AddRanges(PlotModel model, TrendPicture picture)
    {
        var chart = picture.Chart;
        var points = chart.MovingRanges.Select((r, i) => (Range: r, Place: i)).Where(r => r.Range is not null).Select(r => (Point: new DataPoint(r.Place + 1, picture.ShownRange(r.Range!.Value)), r.Place)).ToList();
        Add(model, Lower, RunTraces.Line(null, points.Select(p => p.Point), PlotStyle.Limit, LineStyle.Solid, 1));
        Add(model, Lower, RunTraces.Marks(null, points.Select(p => p.Point), 0, PlotStyle.Ink, OxyColors.White));
        var beyond = points.Where(p => chart.RangeSignals.Contains(p.Place)).Select(p => p.Point).ToList();
        if (beyond.Count > 0)
        {
            var marks = RunTraces.Marks(null, beyond, 1, OxyColors.White, PlotStyle.Next);
            marks.MarkerStrokeThickness = 2.2;
            Add(model, Lower, marks);
        }
    }

    private static void Add(PlotModel model, string axis, LineSeries series)
    {
        series.YAxisKey = axis;
        model.Series.Add(series);
    }
}
