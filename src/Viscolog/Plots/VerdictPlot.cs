using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>The readings of a batch as it is over standing time, against the band that it must meet.</summary>
internal static class VerdictPlot
{
    /// <summary>Makes it.</summary>
    /// <param name="run">The run; its last step is drawn.</param>
    /// <param name="band">The band.</param>
    /// <param name="wanted">The band in words.</param>
    /// <param name="found">The value that the verdict rests on, with its interval.</param>
    public static Picture Of(RunPicture run, ViscosityBand band, string wanted, Estimate found)
    {
        var step = run.Steps[^1];
        var last = run with
        {
            Curve = [],
            Next = null,
            Limit = null,
            Target = band,
            Steps = [step with { Settled = found, Way = [] }],
            Readings = [.. run.Readings.Where(r => r.Step == step.Step && r.Wait is not null)],
        };
        var (time, window) = (StandingWindow.Of([last]), DoseWindow.Of([last]));
        var (across, middle) = (time.Axis(1.12 * time.End), found.Median.MilliPascalSeconds);
        Element[] elements =
        [
            Element.Target.Around(band, wanted),
            new Element.Area(Meaning.Found, null, [Span.Of(0, found), Span.Of(across.High, found)])
            {
                Key = new(Say($"found, {PlotText.Level(found)}")),
            },
            new Element.Line(Meaning.Median, null, [new(0, middle), new(across.High, middle)]) { Key = new(Say("found", "value")) },
            .. RunFrame.Readings(last.Readings, null, r => time.Spot(r.Wait!.Value, r.Value)),
        ];
        var up = new Axis(PlotText.Unit, PlotText.Unit, window.Low, window.High, IsLogarithmic: true);
        return new(null, null, [new(across, up, [.. elements])]);
    }
}
