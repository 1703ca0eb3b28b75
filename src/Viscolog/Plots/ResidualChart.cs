using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>How far each reading lies off what was expected, over its dose, in characters.</summary>
internal static class ResidualChart
{
    public static IEnumerable<string> Draw(IReadOnlyList<RunPicture> pictures, int width, int height, ChartGlyphs glyphs)
    {
        var window = ResidualWindow.Of(pictures);
        var across = new CharAxis("dose, %", 0, window.Dose, IsLogarithmic: false);
        var up = new CharAxis("", -window.Reach, window.Reach, IsLogarithmic: false);
        return CharPanel.Draw(RunCharts.Head(pictures, "off the expected, in repeatabilities", glyphs), across, up, width, height - 1, glyphs, plane => Paint(pictures, plane, glyphs))
            .Append(Legend(pictures, glyphs));
    }

    private static void Paint(IReadOnlyList<RunPicture> pictures, CharPlane plane, ChartGlyphs glyphs)
    {
        plane.Level(0, glyphs.Across);
        plane.Level(ResidualWindow.Usual, glyphs.Target);
        plane.Level(-ResidualWindow.Usual, glyphs.Target);
        foreach (var (i, picture) in pictures.Index())
        {
            foreach (var reading in picture.Readings.Where(r => double.IsFinite(r.StandardizedResidual)).OrderBy(r => r.Doubted))
            {
                plane.Put(reading.Dose.Percent, reading.StandardizedResidual, reading.Doubted ? glyphs.Doubted : pictures.Count == 1 ? glyphs.Reading : RunCharts.Letter(i));
            }
        }

        if (pictures.All(p => p.Readings.IsEmpty))
        {
            plane.Middle("nothing to show yet: no readings");
        }
    }

    private static string Legend(IReadOnlyList<RunPicture> pictures, ChartGlyphs glyphs)
    {
        IEnumerable<string> items = pictures.Count == 1 ? [$"{glyphs.Reading} reading"] : RunCharts.Names(pictures, glyphs);
        items = pictures.Any(p => p.Readings.Any(r => r.Doubted)) ? items.Append($"{glyphs.Doubted} doubted") : items;
        return string.Join("  ", items.Append($"{glyphs.Target} about 95 % lie between"));
    }
}
