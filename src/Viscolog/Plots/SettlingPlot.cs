using OxyPlot;
using OxyPlot.Annotations;
using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>Value over standing time, one trace a step.</summary>
internal static class SettlingPlot
{
    /// <summary>The share of the width kept at the right for the labels of the traces.</summary>
    private const double LabelShare = 0.13;

    public static PlotModel Build(IReadOnlyList<RunPicture> pictures)
    {
        var time = StandingWindow.Of(pictures);
        var window = Window(pictures);
        var model = PlotFrame.Create(pictures, Notes(pictures));
        PlotFrame.AddViscosity(model, pictures, window.Low, window.High);
        PlotFrame.AddAcross(model, $"Standing time since stirring ended, {time.Unit}", time.End / (1 - LabelShare));
        var ends = new List<(DataPoint, string, OxyColor)>();
        var trace = 0;
        for (var i = 0; i < pictures.Count; i++)
        {
            foreach (var step in pictures[i].Steps)
            {
                var label = pictures.Count == 1 ? PlotText.Percent(step.Dose) : $"{Letter(i)} {PlotText.Percent(step.Dose)}";
                AddStep(model, pictures[i], step, trace, time);
                ends.Add((new(time.End, step.Settled.Median.MilliPascalSeconds), label, PlotStyle.ColorOf(trace)));
                trace++;
            }
        }

        AddLegend(model, pictures);
        Finish(model, ends, time.End);
        return model;
    }

    private static void Finish(PlotModel model, List<(DataPoint End, string Text, OxyColor Color)> ends, double end)
    {
        model.Annotations.Add(ends.Count > 0
            ? new EndLabels(ends, end * 1.03) { Layer = AnnotationLayer.AboveSeries }
            : new MiddleNote("nothing to show yet: no step has a reading"));
    }

    private static void AddStep(PlotModel model, RunPicture picture, PicturedStep step, int trace, StandingWindow time)
    {
        var color = PlotStyle.ColorOf(trace);
        var way = step.Way.Select(t => new DataPoint(time.Of(t.Wait), t.Value.Median.MilliPascalSeconds));
        var level = step.Settled.Median.MilliPascalSeconds;
        model.Series.Add(RunTraces.Line(null, way, color, LineStyle.Solid));
        model.Series.Add(RunTraces.Line(null, [new(0, level), new(time.End, level)], color, LineStyle.Dash, 1.2));
        var timed = picture.Readings.Where(r => r.Step == step.Step && r.Wait is not null).ToList();
        foreach (var marks in RunTraces.Readings(timed, r => new(time.Of(r.Wait!.Value), r.Value.MilliPascalSeconds), trace, color, titled: false))
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

    /// <summary>The values that the ways, the readings and the settled values take.</summary>
    public static DoseWindow Window(IReadOnlyList<RunPicture> pictures)
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
