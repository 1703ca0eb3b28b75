using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;

namespace Viscolog.Plots;

/// <summary>String length over dose: what was read, and the lengths wanted.</summary>
internal static class StringPlot
{
    public static PlotModel Build(IReadOnlyList<RunPicture> pictures)
    {
        var model = PlotFrame.Create(pictures, [Count(pictures)]);
        var window = StringWindow.Of(pictures);
        var axis = PlotFrame.Styled(new LinearAxis { Position = AxisPosition.Left, Minimum = 0, Maximum = window.Millimeters });
        axis.Title = "String length, mm";
        model.Axes.Add(axis);
        PlotFrame.AddDose(model, pictures, window.Dose);
        foreach (var (row, target) in pictures.Select(p => p.TargetString).OfType<StringBand>().Distinct().Index())
        {
            var text = $"wanted: {PlotText.Number(target.Low.Millimeters)} to {PlotText.Number(target.High.Millimeters)} mm";
            model.Annotations.Add(new TargetBand(target.Low.Millimeters, target.High.Millimeters, text, row > 0 ? row : null) { Layer = AnnotationLayer.BelowSeries });
        }

        foreach (var (i, picture) in pictures.Index())
        {
            var (color, label) = pictures.Count == 1 ? (PlotStyle.Ink, "string read") : (PlotStyle.ColorOf(i), PlotFrame.Label(picture, pictures));
            var points = picture.Strings.Select(s => new DataPoint(s.Dose.Percent, s.Length.Millimeters)).DefaultIfEmpty(DataPoint.Undefined);
            model.Series.Add(RunTraces.Marks(label, points, i, color, OxyColors.White));
        }

        if (pictures.All(p => p.Strings.IsEmpty))
        {
            model.Annotations.Add(new MiddleNote(StringWindow.Nothing));
        }

        return model;
    }

    private static string Count(IReadOnlyList<RunPicture> pictures)
    {
        var count = pictures.Sum(p => p.Strings.Length);
        return count == 1 ? "1 string length" : $"{count} string lengths";
    }
}
