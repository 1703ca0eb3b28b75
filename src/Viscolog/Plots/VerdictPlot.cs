using OxyPlot;
using OxyPlot.Annotations;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>The readings of a batch as it is over standing time, against the band that it must meet.</summary>
internal static class VerdictPlot
{
    /// <summary>Makes it.</summary>
    /// <param name="picture">The run; its last step is drawn.</param>
    /// <param name="band">The band.</param>
    /// <param name="wanted">The band in words.</param>
    /// <param name="found">The value that the verdict rests on, with its interval.</param>
    public static PlotModel Build(RunPicture picture, ViscosityBand band, string wanted, Estimate found)
    {
        var step = picture.Steps[^1];
        var last = picture with
        {
            Curve = [],
            Next = null,
            Limit = null,
            Target = band,
            Steps = [step with { Settled = found, Way = [] }],
            Readings = [.. picture.Readings.Where(r => r.Step == step.Step && r.Wait is not null)],
        };
        var (time, window) = (StandingWindow.Of([last]), DoseWindow.Of([last]));
        var end = 1.12 * time.End;
        var model = PlotFrame.Create([last], []);
        (model.Title, model.Subtitle) = (null, null);
        PlotFrame.AddViscosity(model, [last], window.Low, window.High).Title = PlotText.Unit;
        PlotFrame.AddAcross(model, $"Standing time since stirring ended, {time.Unit}", end);
        model.Annotations.Add(new TargetBand(band.Low.MilliPascalSeconds, band.High.MilliPascalSeconds, wanted, null) { Layer = AnnotationLayer.BelowSeries });
        model.Series.Add(RunTraces.Band($"found, {PlotText.Level(found)}", [(0, found), (end, found)], OxyColor.FromAColor(0x50, PlotStyle.Curve), LineStyle.None));
        model.Series.Add(RunTraces.Line("found", [new(0, found.Median.MilliPascalSeconds), new(end, found.Median.MilliPascalSeconds)], PlotStyle.Curve, LineStyle.Solid));
        foreach (var marks in RunTraces.Readings(last.Readings, r => new(time.Of(r.Wait!.Value), r.Value.MilliPascalSeconds), 0, PlotStyle.Ink, titled: true))
        {
            model.Series.Add(marks);
        }

        return model;
    }
}
