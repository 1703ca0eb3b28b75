using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Legends;
using OxyPlot.Series;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Plots;

/// <summary>Players on one practice pot side by side: the hidden curve, what each read, and where the pot was on its way to.</summary>
internal static class PracticePlot
{
    private const double Gap = 0.03;
    private const int CurveSamples = 121;

    public static PlotModel Build(IReadOnlyList<NamedPath> players)
    {
        var truth = players[0].Path.Truth;
        var model = PlotFrame.Create(PracticeWords.Title(players[0].Path.Session.Game), $"hidden curve '{truth.Family}' · time constant {Shown.Duration(truth.TimeConstant)} · shaded: {PracticePictures.Limit(truth).Why}");
        if (model.Legends[0] is Legend legend)
        {
            legend.LegendSymbolLength = 28;
        }

        var end = PracticePictures.End(players.Select(p => p.Path));
        var (low, high) = Window(players, truth, end);
        model.Axes.Add(Viscosities(low, high));
        for (var i = 0; i < players.Count; i++)
        {
            Panel(model, players[i], FormattableString.Invariant($"dose {i}"), Place(i, players.Count), end, high, titled: i == 0);
        }

        return model;
    }

    private static (double From, double To) Place(int panel, int count)
    {
        var width = (1 - (Gap * (count - 1))) / count;
        return (panel * (width + Gap), (panel * (width + Gap)) + width);
    }

    private static ViscosityAxis Viscosities(double low, double high)
    {
        var axis = PlotFrame.Styled(new ViscosityAxis { Position = AxisPosition.Left, Minimum = low, Maximum = high, Key = "body" });
        axis.Title = $"Viscosity, {PlotText.Unit}";
        return axis;
    }

    private static (double Low, double High) Window(IReadOnlyList<NamedPath> players, PotTruth truth, Dose end)
    {
        var values = truth.Samples(end, CurveSamples).Select(s => s.Body)
            .Concat(players.SelectMany(p => p.Path.Steps).SelectMany(s => new[] { s.Line.Shown ?? s.Settled, s.Settled }))
            .Append(truth.Band.High).Select(v => v.MilliPascalSeconds).ToList();
        return (values.Min() * 0.8, values.Max() * 1.35);
    }

    private static void Panel(PlotModel model, NamedPath player, string key, (double From, double To) place, Dose end, double high, bool titled)
    {
        var axis = PlotFrame.Styled(new LinearAxis
        {
            Position = AxisPosition.Bottom,
            Key = key,
            Minimum = -0.05 * end.Percent,
            Maximum = end.Percent,
            StartPosition = place.From,
            EndPosition = place.To,
            MinimumMajorStep = 1,
        });
        axis.Title = (titled ? "dose, % · " : "") + PlotFrame.Literal(PlainText.Shorten(PlainText.Clean(player.Name), 22) + ": " + PracticeWords.Verdict(player.Path.Score.Verdict));
        model.Axes.Add(axis);
        var truth = player.Path.Truth;
        Region(model, key, PracticePictures.Limit(truth).Dose.Percent, end.Percent, 1e-9, high, OxyColor.FromAColor(0x22, PlotStyle.Limit));
        Region(model, key, axis.Minimum, end.Percent, truth.Band.Low.MilliPascalSeconds, truth.Band.High.MilliPascalSeconds, OxyColor.FromAColor(0x38, PlotStyle.Target));
        Add(model, key, RunTraces.Line(titled ? "hidden curve" : null, truth.Samples(end, CurveSamples).Select(s => Point(s.Dose, s.Body)), PlotStyle.Curve, LineStyle.Solid));
        Steps(model, key, player.Path, titled);
        if (titled)
        {
            model.Annotations.Add(new TextAnnotation
            {
                Text = $"target {PlotText.Number(truth.Band.Aim)}",
                TextPosition = new(0, truth.Band.Low.MilliPascalSeconds),
                TextHorizontalAlignment = HorizontalAlignment.Left,
                TextVerticalAlignment = VerticalAlignment.Top,
                TextColor = PlotStyle.Target,
                StrokeThickness = 0,
                XAxisKey = key,
                YAxisKey = "body",
            });
        }
    }

    private static void Steps(PlotModel model, string key, PracticePath path, bool titled)
    {
        var read = path.Steps.Where(s => s.Line.Shown is not null).ToList();
        foreach (var (i, step) in read.Where(s => Math.Abs(s.PercentToCome) > PracticeWords.EarlyPercent).Index())
        {
            Add(model, key, RunTraces.Line(titled && i == 0 ? "still to come" : null, [Point(step.Dose, step.Line.Shown!.Value), Point(step.Dose, step.Settled)], PlotStyle.Next, LineStyle.Dot, 1.4));
        }

        Add(model, key, RunTraces.Line(null, read.Select(s => Point(s.Dose, s.Line.Shown!.Value)), OxyColor.FromAColor(0x80, PlotStyle.Ink), LineStyle.Solid, 1));
        Add(model, key, RunTraces.Marks(titled ? "settles at" : null, path.Steps.Select(s => Point(s.Dose, s.Settled)), 3, OxyColors.White, PlotStyle.Ink));
        Add(model, key, RunTraces.Marks(titled ? "read" : null, read.Select(s => Point(s.Dose, s.Line.Shown!.Value)), 0, PlotStyle.Ink, OxyColors.White));
        if (path.Steps.FirstOrDefault(s => s.IsOver) is { } over)
        {
            Add(model, key, RunTraces.Marks(null, [Point(over.Dose, over.Settled)], 5, PlotStyle.Next, OxyColors.White));
            model.Annotations.Add(new TextAnnotation
            {
                Text = FormattableString.Invariant($"over at dose {path.Score.WentOverAt}"),
                TextPosition = new(over.Dose.Percent, over.Settled.MilliPascalSeconds),
                Offset = new ScreenVector(-8, 0),
                TextHorizontalAlignment = HorizontalAlignment.Right,
                TextVerticalAlignment = VerticalAlignment.Bottom,
                TextColor = OxyColor.FromRgb(0x9C, 0x45, 0x00),
                StrokeThickness = 0,
                XAxisKey = key,
                YAxisKey = "body",
            });
        }
    }

    private static void Region(PlotModel model, string key, double left, double right, double bottom, double top, OxyColor fill)
        => model.Annotations.Add(new RectangleAnnotation
        {
            MinimumX = left,
            MaximumX = Math.Max(left, right),
            MinimumY = bottom,
            MaximumY = top,
            Fill = fill,
            Layer = AnnotationLayer.BelowSeries,
            XAxisKey = key,
            YAxisKey = "body",
        });

    private static void Add(PlotModel model, string key, XYAxisSeries series)
    {
        (series.XAxisKey, series.YAxisKey) = (key, "body");
        model.Series.Add(series);
    }

    private static DataPoint Point(Dose dose, Viscosity body) => new(dose.Percent, body.MilliPascalSeconds);
}
