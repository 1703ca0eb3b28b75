using Viscolog.Core.Advising;
using Viscolog.Core.Pots;

namespace Viscolog.Plots;

/// <summary>String length over dose in characters.</summary>
internal static class StringChart
{
    public static IEnumerable<string> Draw(IReadOnlyList<RunPicture> pictures, int width, int height, ChartGlyphs glyphs)
    {
        var window = StringWindow.Of(pictures);
        var across = new CharAxis("dose, %", 0, window.Dose, IsLogarithmic: false);
        var up = new CharAxis("", 0, window.Millimeters, IsLogarithmic: false);
        return CharPanel.Draw(RunCharts.Head(pictures, "string length, mm", glyphs), across, up, width, height - 1, glyphs, plane => Paint(pictures, plane, glyphs))
            .Append(Legend(pictures, glyphs));
    }

    private static void Paint(IReadOnlyList<RunPicture> pictures, CharPlane plane, ChartGlyphs glyphs)
    {
        foreach (var target in Targets(pictures))
        {
            plane.Level(target.Low.Millimeters, glyphs.Target);
            plane.Level(target.High.Millimeters, glyphs.Target);
        }

        foreach (var (i, picture) in pictures.Index())
        {
            foreach (var read in picture.Strings)
            {
                plane.Put(read.Dose.Percent, read.Length.Millimeters, pictures.Count == 1 ? glyphs.Reading : RunCharts.Letter(i));
            }
        }

        if (pictures.All(p => p.Strings.IsEmpty))
        {
            plane.Middle(StringWindow.Nothing);
        }
    }

    private static string Legend(IReadOnlyList<RunPicture> pictures, ChartGlyphs glyphs)
    {
        var read = pictures.Count == 1 ? [$"{glyphs.Reading} string read"] : RunCharts.Names(pictures, glyphs);
        var wanted = Targets(pictures).Select(t => $"{glyphs.Target} wanted: {PlotText.Number(t.Low.Millimeters)} to {PlotText.Number(t.High.Millimeters)} mm");
        return string.Join("  ", read.Concat(wanted));
    }

    private static IEnumerable<StringBand> Targets(IReadOnlyList<RunPicture> pictures) => pictures.Select(p => p.TargetString).OfType<StringBand>().Distinct();
}
