using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>Paints the inside of a terminal chart, from the back to the front.</summary>
internal static class ChartPainter
{
    /// <summary>A region narrower than this cannot hold words; its reason then stands in the legend alone.</summary>
    private const int LeastWordColumns = 10;

    public static void Paint(IReadOnlyList<RunPicture> pictures, CharPlane plane, ChartGlyphs glyphs)
    {
        var limit = pictures.Select(p => p.Limit).OfType<DoseLimit>().MinBy(l => l.Dose);
        Shade(limit, plane, glyphs);
        foreach (var target in pictures.Select(p => p.Target).OfType<ViscosityBand>().Distinct())
        {
            plane.Level(target.High.MilliPascalSeconds, glyphs.Target);
            plane.Level(target.Low.MilliPascalSeconds, glyphs.Target);
        }

        foreach (var picture in pictures)
        {
            Curve(picture, plane, withBand: pictures.Count == 1);
        }

        Words(pictures, limit, plane, glyphs);
        foreach (var (i, picture) in pictures.Index())
        {
            Next(picture, plane, glyphs);
            Marks(picture, plane, glyphs, pictures.Count == 1 ? null : i);
        }

        if (pictures.All(p => p.Readings.IsEmpty && p.Steps.IsEmpty && p.Curve.IsEmpty))
        {
            plane.Middle("nothing to show yet: the first reading starts the picture");
        }
    }

    private static void Shade(DoseLimit? limit, CharPlane plane, ChartGlyphs glyphs)
    {
        var from = limit is null ? plane.Grid.Columns : plane.Column(limit.Dose.Percent);
        for (var column = from; column < plane.Grid.Columns; column++)
        {
            for (var row = 0; row < plane.Grid.Rows; row++)
            {
                plane.Grid.Put(column, row, glyphs.Limit);
            }
        }
    }

    private static void Curve(RunPicture picture, CharPlane plane, bool withBand)
    {
        if (withBand)
        {
            Trace(picture, plane, e => e.Low, '.', 2);
            Trace(picture, plane, e => e.High, '.', 2);
        }

        Trace(picture, plane, e => e.Median, '*', 1);
    }

    private static void Trace(RunPicture picture, CharPlane plane, Func<Estimate, Viscosity> edge, char plain, int every)
        => plane.Trace([.. picture.Curve.Select(c => (c.Dose.Percent, edge(c.Body).MilliPascalSeconds))], plain, every);

    private static void Words(IReadOnlyList<RunPicture> pictures, DoseLimit? limit, CharPlane plane, ChartGlyphs glyphs)
    {
        if (pictures.Select(p => p.Target).OfType<ViscosityBand>().FirstOrDefault() is { } target)
        {
            plane.Grid.Write(1, plane.Row(target.High), " target ");
        }

        if (limit is null)
        {
            return;
        }

        var from = plane.Column(limit.Dose.Percent) + 1;
        var room = plane.Grid.Columns - from - 1;
        var lines = room < LeastWordColumns ? [] : Paragraph.Broken(glyphs.Show("limit: " + limit.Why), room, t => PlainText.Columns(t));
        lines = lines.Count > plane.Grid.Rows / 2 ? [] : lines;
        lines = lines.Count == 0 && room >= "limit".Length ? ["limit"] : lines;
        for (var i = 0; i < lines.Count; i++)
        {
            plane.Grid.Write(from, plane.Grid.Rows - lines.Count + i, lines[i]);
        }
    }

    private static void Next(RunPicture picture, CharPlane plane, ChartGlyphs glyphs)
    {
        if (picture.Next is not { } next)
        {
            return;
        }

        var (from, to) = (plane.Column(next.From.Percent), plane.Column(next.To.Percent));
        var (start, end) = (plane.Row(next.Body), plane.Row(next.Expected.Median));
        for (var row = Math.Max(0, plane.Row(next.Expected.High)); row <= Math.Min(plane.Grid.Rows - 1, plane.Row(next.Expected.Low)); row++)
        {
            plane.Grid.Put(to, row, glyphs.Interval);
        }

        for (var column = from + 1; column < to; column++)
        {
            var part = (column - from) / (double)(to - from);
            plane.Grid.Put(column, (int)Math.Round(start + (part * (end - start))), glyphs.Path);
        }

        plane.Grid.Put(to, end, glyphs.Next);
    }

    /// <summary>Settled values and readings; doubted ones on top, so that none is hidden.</summary>
    private static void Marks(RunPicture picture, CharPlane plane, ChartGlyphs glyphs, int? place)
    {
        var (settled, reading) = place is { } i ? ((char)('a' + (i % 26)), (char)('A' + (i % 26))) : (glyphs.Settled, glyphs.Reading);
        foreach (var step in picture.Steps)
        {
            plane.Grid.Put(plane.Column(step.Dose.Percent), plane.Row(step.Settled.Median), settled);
        }

        foreach (var r in picture.Readings.OrderBy(r => r.Doubted))
        {
            var (column, row) = (plane.Column(r.Dose.Percent), plane.Row(r.Value));
            var shared = place is null && (plane.Grid.At(column, row) == settled.ToString() || plane.Grid.At(column, row) == glyphs.Both.ToString());
            plane.Grid.Put(column, row, r.Doubted ? glyphs.Doubted : shared ? glyphs.Both : reading);
        }
    }
}
