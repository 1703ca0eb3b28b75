using System.Globalization;
using OxyPlot;
using OxyPlot.Axes;
using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>How far each reading lies off what was expected, over its dose.</summary>
internal static class ResidualPlot
{
    public static PlotModel Build(IReadOnlyList<RunPicture> pictures)
    {
        var model = PlotFrame.Create(pictures, Notes(pictures));
        var (end, reach) = ResidualWindow.Of(pictures);
        var axis = PlotFrame.Styled(new LinearAxis { Position = AxisPosition.Left, Minimum = -reach, Maximum = reach });
        axis.Title = "Standardised residual, in repeatabilities";
        axis.LabelFormatter = Signed;
        model.Axes.Add(axis);
        PlotFrame.AddDose(model, pictures, end);
        AddLevels(model, end);
        for (var i = 0; i < pictures.Count; i++)
        {
            AddRun(model, pictures, i);
        }

        if (pictures.All(p => p.Readings.IsEmpty))
        {
            model.Annotations.Add(new MiddleNote("nothing to show yet: no readings"));
        }

        return model;
    }

    /// <summary>With a minus sign as wide as the plus.</summary>
    private static string Signed(double value) => value.ToString("0.##", CultureInfo.InvariantCulture).Replace('-', '\u2212');

    private static void AddLevels(PlotModel model, double end)
    {
        DataPoint[] Level(double y) => [new(-end, y), new(end, y)];
        model.Series.Add(RunTraces.Line("as expected", Level(0), PlotStyle.Ink, LineStyle.Solid, 1.4));
        model.Series.Add(RunTraces.Line("±2: about 95 % of readings lie between", Level(ResidualWindow.Usual), PlotStyle.Ink, LineStyle.Dash, 1.2));
        model.Series.Add(RunTraces.Line(null, Level(-ResidualWindow.Usual), PlotStyle.Ink, LineStyle.Dash, 1.2));
    }

    private static void AddRun(PlotModel model, IReadOnlyList<RunPicture> pictures, int place)
    {
        var (picture, alone) = (pictures[place], pictures.Count == 1);
        DataPoint Place(PicturedReading r) => double.IsFinite(r.StandardizedResidual) ? new(r.Dose.Percent, r.StandardizedResidual) : DataPoint.Undefined;
        var color = alone ? PlotStyle.Ink : PlotStyle.ColorOf(place);
        foreach (var marks in RunTraces.Readings(picture.Readings, Place, place, color, titled: alone))
        {
            model.Series.Add(marks);
        }

        if (!alone)
        {
            model.Series.Add(RunTraces.Marks(PlotFrame.Label(picture, pictures), [DataPoint.Undefined], place, color, OxyColors.White));
        }
    }

    private static IEnumerable<string> Notes(IReadOnlyList<RunPicture> pictures)
    {
        var readings = pictures.SelectMany(p => p.Readings).ToList();
        yield return readings.Count == 1 ? "1 reading" : $"{readings.Count} readings";
        if (readings.Count(r => r.Doubted) is var doubted and > 0)
        {
            yield return $"{doubted} doubted";
        }
    }
}
