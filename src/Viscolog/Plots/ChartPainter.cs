using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>Paints the inside of a terminal chart, from the back to the front.</summary>
internal static class ChartPainter
{
    /// <summary>A region narrower than this cannot hold words; its reason then stands in the legend alone.</summary>
    private const int LeastWordColumns = 10;

    public static void Paint(IReadOnlyList<RunPicture> pictures, ChartScale scale, ChartGlyphs glyphs)
    {
        var limit = pictures.Select(p => p.Limit).OfType<DoseLimit>().MinBy(l => l.Dose);
        Shade(limit, scale, glyphs);
        foreach (var target in pictures.Select(p => p.Target).OfType<ViscosityBand>().Distinct())
        {
            Level(scale, scale.Row(target.High), glyphs);
            Level(scale, scale.Row(target.Low), glyphs);
        }

        foreach (var picture in pictures)
        {
            Curve(picture, scale, withBand: pictures.Count == 1);
        }

        Words(pictures, limit, scale, glyphs);
        foreach (var (i, picture) in pictures.Index())
        {
            Next(picture, scale, glyphs);
            Marks(picture, scale, glyphs, pictures.Count == 1 ? null : i);
        }

        if (pictures.All(p => p.Readings.IsEmpty && p.Steps.IsEmpty && p.Curve.IsEmpty))
        {
            Middle("nothing to show yet: the first reading starts the picture", scale.Grid);
        }
    }

    private static void Shade(DoseLimit? limit, ChartScale scale, ChartGlyphs glyphs)
    {
        var from = limit is null ? scale.Grid.Columns : scale.Column(limit.Dose.Percent);
        for (var column = from; column < scale.Grid.Columns; column++)
        {
            for (var row = 0; row < scale.Grid.Rows; row++)
            {
                scale.Grid.Put(column, row, glyphs.Limit);
            }
        }
    }

    private static void Level(ChartScale scale, int row, ChartGlyphs glyphs)
    {
        for (var column = 0; column < scale.Grid.Columns; column++)
        {
            scale.Grid.Put(column, row, glyphs.Target);
        }
    }

    private static void Curve(RunPicture picture, ChartScale scale, bool withBand)
    {
        if (withBand)
        {
            Trace(picture, scale, e => e.Low, '.', 2);
            Trace(picture, scale, e => e.High, '.', 2);
        }

        Trace(picture, scale, e => e.Median, '*', 1);
    }

    /// <summary>Dots along a curve; a solid one (<paramref name="every"/> 1) is closed where it is steep.</summary>
    private static void Trace(RunPicture picture, ChartScale scale, Func<Estimate, Viscosity> edge, char plain, int every)
    {
        int? before = null;
        for (var column = 0; column < scale.Grid.DotColumns; column++)
        {
            if (CurveLine.At(picture.Curve, scale.DoseAt(column), s => edge(s.Body)) is not { } value)
            {
                before = null;
                continue;
            }

            var row = scale.DotRow(value);
            if (column % every == 0)
            {
                scale.Grid.Dot(column, row, plain);
            }

            if (every == 1 && before is { } last)
            {
                Close(scale.Grid, column, last, row, plain);
            }

            before = row;
        }
    }

    /// <summary>Fills the gap between two neighbouring columns' dots, half of it in each.</summary>
    private static void Close(CharGrid grid, int column, int before, int now, char plain)
    {
        var step = Math.Sign(now - before);
        for (var row = before + step; row != now && step != 0; row += step)
        {
            var nearer = Math.Abs(row - before) < Math.Abs(now - row) ? column - 1 : column;
            grid.Dot(nearer, Math.Clamp(row, -1, grid.DotRows), plain);
        }
    }

    private static void Words(IReadOnlyList<RunPicture> pictures, DoseLimit? limit, ChartScale scale, ChartGlyphs glyphs)
    {
        if (pictures.Select(p => p.Target).OfType<ViscosityBand>().FirstOrDefault() is { } target)
        {
            scale.Grid.Write(1, scale.Row(target.High), " target ");
        }

        if (limit is null)
        {
            return;
        }

        var from = scale.Column(limit.Dose.Percent) + 1;
        var room = scale.Grid.Columns - from - 1;
        var lines = room < LeastWordColumns ? [] : TextWrap.Lines(glyphs.Show("limit: " + limit.Why), room, t => PlotText.Columns(t));
        lines = lines.Count > scale.Grid.Rows / 2 ? [] : lines;
        lines = lines.Count == 0 && room >= "limit".Length ? ["limit"] : lines;
        for (var i = 0; i < lines.Count; i++)
        {
            scale.Grid.Write(from, scale.Grid.Rows - lines.Count + i, lines[i]);
        }
    }

    private static void Next(RunPicture picture, ChartScale scale, ChartGlyphs glyphs)
    {
        if (picture.Next is not { } next)
        {
            return;
        }

        var (from, to) = (scale.Column(next.From.Percent), scale.Column(next.To.Percent));
        var (start, end) = (scale.Row(next.Body), scale.Row(next.Expected.Median));
        for (var row = Math.Max(0, scale.Row(next.Expected.High)); row <= Math.Min(scale.Grid.Rows - 1, scale.Row(next.Expected.Low)); row++)
        {
            scale.Grid.Put(to, row, glyphs.Interval);
        }

        for (var column = from + 1; column < to; column++)
        {
            var part = (column - from) / (double)(to - from);
            scale.Grid.Put(column, (int)Math.Round(start + (part * (end - start))), glyphs.Path);
        }

        scale.Grid.Put(to, end, glyphs.Next);
    }

    /// <summary>Settled values and readings; doubted ones on top, so that none is hidden.</summary>
    private static void Marks(RunPicture picture, ChartScale scale, ChartGlyphs glyphs, int? place)
    {
        var (settled, reading) = place is { } i ? ((char)('a' + (i % 26)), (char)('A' + (i % 26))) : (glyphs.Settled, glyphs.Reading);
        foreach (var step in picture.Steps)
        {
            scale.Grid.Put(scale.Column(step.Dose.Percent), scale.Row(step.Settled.Median), settled);
        }

        foreach (var r in picture.Readings.OrderBy(r => r.Doubted))
        {
            var (column, row) = (scale.Column(r.Dose.Percent), scale.Row(r.Value));
            var shared = place is null && (scale.Grid.At(column, row) == settled.ToString() || scale.Grid.At(column, row) == glyphs.Both.ToString());
            scale.Grid.Put(column, row, r.Doubted ? glyphs.Doubted : shared ? glyphs.Both : reading);
        }
    }

    private static void Middle(string text, CharGrid grid)
    {
        var lines = TextWrap.Lines(text, grid.Columns - 2, t => PlotText.Columns(t));
        for (var i = 0; i < lines.Count; i++)
        {
            grid.Write((grid.Columns - lines[i].Length) / 2, Math.Max(0, (grid.Rows - lines.Count) / 2) + i, lines[i]);
        }
    }
}
