using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>Four panels: body above and string below, over the dose of either thickener.</summary>
internal static class PairSlicePlot
{
    private const string Left = "left";
    private const string Right = "right";
    private const string Above = "above";
    private const string Below = "below";

    public static PlotModel Build(PairPicture picture)
    {
        var model = PlotFrame.Create(picture.Name ?? "Run without a name", Subtitle(picture));
        model.PlotAreaBorderThickness = new OxyThickness(0);
        AddAcross(model, picture.OverBody, Left, 0, 0.48);
        AddAcross(model, picture.OverString, Right, 0.52, 1);
        var samples = picture.OverBody.Samples.AddRange(picture.OverString.Samples);
        AddUp(model, Above, $"Viscosity at {PlotText.Celsius(picture.ReferenceTemperature)}, {PlotText.Unit}", 0.53, 1, Window(
            [.. samples.Select(s => s.Body.Median.MilliPascalSeconds), .. picture.Path.SelectMany(p => p.Bodies).Select(b => b.MilliPascalSeconds), .. Ends(picture.Target)]));
        AddUp(model, Below, "String length, mm", 0, 0.47, Window(
            [.. samples.Select(s => s.Length.Median.Millimeters), .. picture.Path.SelectMany(p => p.Lengths).Select(l => l.Millimeters), .. picture.TargetString is { } t ? new[] { Math.Max(t.Low.Millimeters, 0.5), t.High.Millimeters } : []]));
        foreach (var (slice, key, titled) in new[] { (picture.OverBody, Left, true), (picture.OverString, Right, false) })
        {
            AddBands(model, picture, slice, key);
            AddCurve(model, slice, key, Above, titled, s => (s.Body.Low.MilliPascalSeconds, s.Body.Median.MilliPascalSeconds, s.Body.High.MilliPascalSeconds));
            AddCurve(model, slice, key, Below, false, s => (s.Length.Low.Millimeters, s.Length.Median.Millimeters, s.Length.High.Millimeters));
            double At(PairPlace place) => (key == Left ? place.Body : place.Second).Percent;
            bool IsHere(PairPlace place) => Math.Abs((key == Left ? place.Second : place.Body).Percent - slice.OtherDose.Percent) < 1e-6;
            AddMarks(model, picture, key, Above, titled, At, IsHere, p => p.Bodies.Select(b => b.MilliPascalSeconds));
            AddMarks(model, picture, key, Below, false, At, IsHere, p => p.Lengths.Select(l => l.Millimeters));
        }

        return model;
    }

    private static string Subtitle(PairPicture picture)
        => $"left: {picture.StringThickener} stays at {PlotText.Percent(picture.OverBody.OtherDose)} · right: {picture.BodyThickener} stays at {PlotText.Percent(picture.OverString.OtherDose)}";

    private static double[] Ends(ViscosityBand? band) => band is null ? [] : [band.Low.MilliPascalSeconds, band.High.MilliPascalSeconds];

    private static (double Low, double High) Window(double[] values)
    {
        var (low, high) = (values.Min(), values.Max());
        var pad = Math.Max(0.08 * Math.Log(high / low), 0.1);
        return (low * Math.Exp(-pad), high * Math.Exp(pad));
    }

    private static void AddAcross(PlotModel model, PairSlice slice, string key, double from, double to)
    {
        var end = slice.Samples[^1].Dose.Percent;
        var axis = PlotFrame.Styled(new LinearAxis { Position = AxisPosition.Bottom, Key = key, Minimum = -0.03 * end, Maximum = end, StartPosition = from, EndPosition = to });
        axis.Title = PlotFrame.Literal($"Dose of {PlainText.Shorten(PlainText.Clean(slice.Thickener), 20)}, %");
        axis.MajorGridlineStyle = LineStyle.None;
        model.Axes.Add(axis);
    }

    private static void AddUp(PlotModel model, string key, string title, double from, double to, (double Low, double High) window)
    {
        var axis = PlotFrame.Styled(new ViscosityAxis { Position = AxisPosition.Left, Key = key, Minimum = window.Low, Maximum = window.High, StartPosition = from, EndPosition = to });
        axis.Title = title;
        model.Axes.Add(axis);
    }

    private static void AddBands(PlotModel model, PairPicture picture, PairSlice slice, string key)
    {
        var end = slice.Samples[^1].Dose.Percent;
        if (picture.Target is { } band)
        {
            model.Annotations.Add(Rectangle(key, Above, end, band.Low.MilliPascalSeconds, band.High.MilliPascalSeconds));
        }

        if (picture.TargetString is { } strings)
        {
            model.Annotations.Add(Rectangle(key, Below, end, Math.Max(strings.Low.Millimeters, 1e-3), strings.High.Millimeters));
        }
    }

    private static RectangleAnnotation Rectangle(string across, string up, double end, double low, double high) => new()
    {
        XAxisKey = across,
        YAxisKey = up,
        MinimumX = -0.03 * end,
        MaximumX = end,
        MinimumY = low,
        MaximumY = high,
        Fill = OxyColor.FromAColor(0x28, PlotStyle.Target),
        Stroke = PlotStyle.Target,
        StrokeThickness = 1.2,
        Layer = AnnotationLayer.BelowSeries,
    };

    private static void AddCurve(PlotModel model, PairSlice slice, string across, string up, bool titled, Func<PairSample, (double Low, double Median, double High)> of)
    {
        var band = new AreaSeries
        {
            Title = titled ? $"band of the mean, {PlotText.Level(slice.Samples[0].Body)}" : null,
            RenderInLegend = titled,
            Fill = OxyColor.FromAColor(0x50, PlotStyle.Curve),
            Color = OxyColors.Undefined,
            LineStyle = LineStyle.None,
            XAxisKey = across,
            YAxisKey = up,
        };
        foreach (var sample in slice.Samples)
        {
            band.Points.Add(new(sample.Dose.Percent, of(sample).Low));
            band.Points2.Add(new(sample.Dose.Percent, of(sample).High));
        }

        model.Series.Add(band);
        var line = RunTraces.Line(titled ? "median" : null, slice.Samples.Select(s => new DataPoint(s.Dose.Percent, of(s).Median)), PlotStyle.Curve, LineStyle.Solid);
        (line.XAxisKey, line.YAxisKey) = (across, up);
        model.Series.Add(line);
    }

    private static void AddMarks(PlotModel model, PairPicture picture, string across, string up, bool titled, Func<PairPlace, double> at, Func<PairPlace, bool> isHere, Func<PairPoint, IEnumerable<double>> values)
    {
        foreach (var here in new[] { true, false })
        {
            var points = picture.Path.Where(p => isHere(p.Place) == here).SelectMany(p => values(p).Select(v => new DataPoint(at(p.Place), v))).DefaultIfEmpty(DataPoint.Undefined);
            var title = !titled ? null : here ? "reading at this dose of the other" : "at another dose of it";
            var marks = RunTraces.Marks(title, points, here ? 0 : 1, here ? PlotStyle.Ink : OxyColors.White, here ? OxyColors.White : PlotStyle.Limit);
            (marks.XAxisKey, marks.YAxisKey) = (across, up);
            model.Series.Add(marks);
        }
    }
}
