using OxyPlot;
using OxyPlot.Annotations;
using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>Value over standing time, one trace a step.</summary>
internal static class SettlingPlot
{
    /// <summary>The share of the width kept at the right for the labels of the traces.</summary>
    private const double LabelShare = 0.13;

    /// <summary>From here on the axis counts minutes.</summary>
    private const double MinutesFrom = 600;

    public static PlotModel Build(IReadOnlyList<RunPicture> pictures)
    {
        var seconds = pictures.SelectMany(Waits).Select(w => w.TotalSeconds).DefaultIfEmpty(0).Max();
        var end = seconds > 0 ? seconds : 60;
        var unit = end >= MinutesFrom ? 60.0 : 1;
        var window = Window(pictures);
        var model = PlotFrame.Create(pictures, Notes(pictures));
        PlotFrame.AddViscosity(model, pictures, window.Low, window.High);
        PlotFrame.AddAcross(model, $"Standing time since stirring ended, {(unit > 1 ? "min" : "s")}", end / unit / (1 - LabelShare));
        var ends = new List<(DataPoint, string, OxyColor)>();
        var trace = 0;
        for (var i = 0; i < pictures.Count; i++)
        {
            foreach (var step in pictures[i].Steps)
            {
                var label = pictures.Count == 1 ? PlotText.Percent(step.Dose) : $"{Letter(i)} {PlotText.Percent(step.Dose)}";
                AddStep(model, pictures[i], step, trace, end / unit, unit);
                ends.Add((new(end / unit, step.Settled.Median.MilliPascalSeconds), label, PlotStyle.ColorOf(trace)));
                trace++;
            }
        }

        AddLegend(model, pictures);
        Finish(model, ends, end / unit);
        return model;
    }

    private static void Finish(PlotModel model, List<(DataPoint End, string Text, OxyColor Color)> ends, double end)
    {
        model.Annotations.Add(ends.Count > 0
            ? new EndLabels(ends, end * 1.03) { Layer = AnnotationLayer.AboveSeries }
            : new MiddleNote("nothing to show yet: no step has a reading"));
    }

    private static void AddStep(PlotModel model, RunPicture picture, PicturedStep step, int trace, double end, double unit)
    {
        var color = PlotStyle.ColorOf(trace);
        var way = step.Way.Select(t => new DataPoint(t.Wait.TotalSeconds / unit, t.Value.Median.MilliPascalSeconds));
        var level = step.Settled.Median.MilliPascalSeconds;
        model.Series.Add(RunTraces.Line(null, way, color, LineStyle.Solid));
        model.Series.Add(RunTraces.Line(null, [new(0, level), new(end, level)], color, LineStyle.Dash, 1.2));
        var timed = picture.Readings.Where(r => r.Step == step.Step && r.Wait is not null).ToList();
        foreach (var marks in RunTraces.Readings(timed, r => new(r.Wait!.Value.TotalSeconds / unit, r.Value.MilliPascalSeconds), trace, color, titled: false))
        {
            model.Series.Add(marks);
        }
    }

    /// <summary>Entries that stand for all traces, as shape and colour tell the steps apart and the labels name them.</summary>
    private static void AddLegend(PlotModel model, IReadOnlyList<RunPicture> pictures)
    {
        var timed = pictures.SelectMany(p => p.Readings).Where(r => r.Wait is not null).ToList();
        DataPoint[] nowhere = [DataPoint.Undefined];
        foreach (var marks in RunTraces.Readings(timed, _ => DataPoint.Undefined, 0, PlotStyle.Ink, titled: true))
        {
            model.Series.Add(marks);
        }

        if (pictures.Any(p => p.Steps.Any(s => !s.Way.IsEmpty)))
        {
            model.Series.Add(RunTraces.Line("expected on the way", nowhere, PlotStyle.Ink, LineStyle.Solid));
        }

        if (pictures.Any(p => !p.Steps.IsEmpty))
        {
            model.Series.Add(RunTraces.Line("settled value", nowhere, PlotStyle.Ink, LineStyle.Dash, 1.2));
        }

        for (var i = 0; i < pictures.Count && pictures.Count > 1; i++)
        {
            model.Series.Add(RunTraces.Line($"{Letter(i)}: {PlotFrame.Label(pictures[i], pictures)}", nowhere, OxyColors.Undefined, LineStyle.None));
        }
    }

    private static string Letter(int i) => i < 26 ? ((char)('A' + i)).ToString() : $"{i + 1}";

    private static IEnumerable<TimeSpan> Waits(RunPicture p)
        => p.Readings.Select(r => r.Wait).OfType<TimeSpan>().Concat(p.Steps.SelectMany(s => s.Way).Select(t => t.Wait));

    private static DoseWindow Window(IReadOnlyList<RunPicture> pictures)
        => DoseWindow.Of([.. pictures.Select(p => p with
        {
            Curve = [],
            Target = null,
            Next = null,
            Steps = [.. p.Steps, .. p.Steps.SelectMany(s => s.Way).Select(t => new PicturedStep(0, default, t.Value with { Low = t.Value.Median, High = t.Value.Median }, []))],
        })]);

    private static IEnumerable<string> Notes(IReadOnlyList<RunPicture> pictures)
    {
        if (pictures.All(p => p.Readings.IsEmpty))
        {
            yield return "no readings yet";
        }

        if (pictures.Sum(p => p.Readings.Count(r => r.Wait is null)) is var untimed and > 0)
        {
            yield return $"{untimed} {(untimed == 1 ? "reading" : "readings")} without a wait not shown";
        }
    }
}
