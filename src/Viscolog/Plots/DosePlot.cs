using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Legends;
using OxyPlot.Series;
using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>Body over dose: one run in full, or several laid over each other.</summary>
internal static class DosePlot
{
    private const int DiamondShape = 3;
    private const string OverlayKey = "filled: readings, open: settled, crossed: doubted";

    public static PlotModel Build(IReadOnlyList<RunPicture> pictures)
    {
        var window = DoseWindow.Of(pictures);
        var model = PlotFrame.Create(pictures, pictures.Count == 1 ? PictureNotes.Of(pictures[0]) : [OverlayKey]);
        PlotFrame.AddViscosity(model, pictures, window.Low, window.High);
        PlotFrame.AddDose(model, pictures, window.Dose);
        AddLimits(model, pictures);
        AddTargets(model, pictures);
        if (pictures.Count == 1)
        {
            AddOne(model, pictures[0]);
        }
        else
        {
            AddSeveral(model, pictures);
        }

        if (pictures.All(p => p.Readings.IsEmpty && p.Steps.IsEmpty && p.Curve.IsEmpty))
        {
            model.Annotations.Add(new MiddleNote("nothing to show yet: the first reading starts the picture"));
        }

        return model;
    }

    private static void AddOne(PlotModel model, RunPicture p)
    {
        if (!p.Curve.IsEmpty)
        {
            var level = PlotText.Level(p.Curve[0].Body);
            Add(model, RunTraces.Band($"band of a reading, {PlotText.Level(p.Curve[0].Reading)}", p.Curve.Select(c => (c.Dose.Percent, c.Reading)), OxyColor.FromAColor(0x24, PlotStyle.Curve), LineStyle.Dash));
            Add(model, RunTraces.Band($"band of the mean, {level}", p.Curve.Select(c => (c.Dose.Percent, c.Body)), OxyColor.FromAColor(0x60, PlotStyle.Curve), LineStyle.None));
            Add(model, Median(p, "median curve", PlotStyle.Curve, LineStyle.Solid));
        }

        AddSettled(model, p, 0, titled: true);
        foreach (var series in RunTraces.Readings(p.Readings, Place, 0, PlotStyle.Ink, titled: true))
        {
            Add(model, series);
        }

        AddNext(model, p, labelled: true);
    }

    private static void AddSeveral(PlotModel model, IReadOnlyList<RunPicture> pictures)
    {
        foreach (var (i, p) in pictures.Index())
        {
            var fill = OxyColor.FromAColor((byte)(pictures.Count > 3 ? 0x16 : 0x28), PlotStyle.ColorOf(i));
            Add(model, RunTraces.Band(null, p.Curve.Select(c => (c.Dose.Percent, c.Body)), fill, LineStyle.None));
        }

        foreach (var (i, p) in pictures.Index())
        {
            var color = PlotStyle.ColorOf(i);
            Add(model, Median(p, null, color, PlotStyle.LineOf(i)));
            AddSettled(model, p, i, titled: false);
            foreach (var series in RunTraces.Readings(p.Readings, Place, i, color, titled: false))
            {
                Add(model, series);
            }

            AddNext(model, p, labelled: false);
            AddKey(model, PlotFrame.Label(p, pictures), i);
        }

        if (model.Legends[0] is Legend legend)
        {
            // Long enough to tell the dashes apart.
            legend.LegendSymbolLength = 52;
        }
    }

    /// <summary>One legend line a run: its dash and its mark together.</summary>
    private static void AddKey(PlotModel model, string label, int place)
    {
        var key = RunTraces.Line(label, [DataPoint.Undefined], PlotStyle.ColorOf(place), PlotStyle.LineOf(place));
        RunTraces.Mark(key, place, PlotStyle.ColorOf(place), OxyColors.White);
        Add(model, key);
    }

    private static void Add(PlotModel model, XYAxisSeries series) => model.Series.Add(series);

    private static DataPoint Place(PicturedReading r) => new(r.Dose.Percent, r.Value.MilliPascalSeconds);

    private static LineSeries Median(RunPicture p, string? title, OxyColor color, LineStyle style)
        => RunTraces.Line(title, p.Curve.Select(c => new DataPoint(c.Dose.Percent, c.Body.Median.MilliPascalSeconds)), color, style);

    private static void AddSettled(PlotModel model, RunPicture p, int place, bool titled)
    {
        if (p.Steps.IsEmpty)
        {
            return;
        }

        var color = titled ? PlotStyle.Ink : PlotStyle.ColorOf(place);
        foreach (var bar in RunTraces.Bars(p.Steps.Select(s => (s.Dose.Percent, s.Settled)), color))
        {
            Add(model, bar);
        }

        var points = p.Steps.Select(s => new DataPoint(s.Dose.Percent, s.Settled.Median.MilliPascalSeconds));
        var shape = titled ? DiamondShape : place;
        var marks = RunTraces.Marks(titled ? $"settled value, {PlotText.Level(p.Steps[0].Settled)}" : null, points, shape, OxyColors.White, color);
        marks.MarkerSize = PlotStyle.MarkerSize + 2.5;
        Add(model, marks);
    }

    private static void AddNext(PlotModel model, RunPicture p, bool labelled)
    {
        if (p.Next is { } next)
        {
            model.Annotations.Add(new NextArrow(next, labelled) { Layer = AnnotationLayer.AboveSeries });
        }
    }

    private static void AddLimits(PlotModel model, IReadOnlyList<RunPicture> pictures)
    {
        // Regions of several runs would hide each other: the one that begins first is shaded, as beyond it some run is wrong.
        if (pictures.Select(p => p.Thickener).Distinct(StringComparer.Ordinal).Count() > 1)
        {
            // One thickener's limit says nothing of another's doses.
            return;
        }

        if (pictures.Where(p => p.Limit is not null).MinBy(p => p.Limit!.Dose) is { Limit: { } limit } first)
        {
            var whose = pictures.Count > 1 && pictures.Any(p => p.Limit != limit) ? $", {PlotFrame.Label(first, pictures)}" : "";
            model.Annotations.Add(new LimitRegion(limit, whose) { Layer = AnnotationLayer.BelowSeries });
        }
    }

    private static void AddTargets(PlotModel model, IReadOnlyList<RunPicture> pictures)
    {
        var groups = pictures.Where(p => p.Target is not null).GroupBy(p => p.Target!).ToArray();
        foreach (var (row, group) in groups.Index())
        {
            var whose = pictures.All(p => p.Target is null || p.Target == group.Key) ? "target" : $"target of {PlotFrame.Label(group.First(), pictures)}";
            model.Annotations.Add(TargetBand.Of(group.Key, whose, groups.Length > 1 ? row : null));
        }
    }
}
