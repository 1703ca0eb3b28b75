using Viscolog.Core.Advising;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The lines beneath a terminal chart: what each mark means, and the numbers that the chart can only hint at.</summary>
internal static class ChartLegend
{
    /// <summary>From this width on there is room for numbers.</summary>
    private const int NumbersFrom = 60;

    private const string Gap = "  ";

    /// <summary>Items in order of weight, as many as fit.</summary>
    public static IReadOnlyList<string> Lines(IReadOnlyList<RunPicture> pictures, ChartGlyphs glyphs, int width, int most)
        => Arrange(pictures.Count == 1 ? One(pictures[0], glyphs, width >= NumbersFrom) : Several(pictures, glyphs), glyphs, width, most);

    /// <summary>Items side by side, as many lines as are allowed.</summary>
    public static IReadOnlyList<string> Arrange(IEnumerable<string> items, ChartGlyphs glyphs, int width, int most)
    {
        var lines = new List<string>();
        foreach (var item in items)
        {
            var longer = lines.Count == 0 ? item : lines[^1] + Gap + item;
            if (lines.Count > 0 && PlainText.Columns(longer) <= width)
            {
                lines[^1] = longer;
            }
            else
            {
                lines.AddRange(Paragraph.Broken(item, width, t => PlainText.Columns(t)));
            }
        }

        return lines.Count <= most
            ? lines
            : [.. lines.Take(most - 1), PlainText.Shorten(lines[most - 1] + Gap + lines[most], width, glyphs.Ellipsis)];
    }

    private static IEnumerable<string> One(RunPicture p, ChartGlyphs glyphs, bool roomy)
    {
        if (!p.Readings.IsEmpty)
        {
            yield return $"{glyphs.Reading} reading";
        }

        if (!p.Steps.IsEmpty)
        {
            yield return $"{glyphs.Settled} settled";
            yield return $"{glyphs.Both} both";
        }

        if (p.Readings.Any(r => r.Doubted))
        {
            yield return $"{glyphs.Doubted} doubted";
        }

        if (!p.Curve.IsEmpty && roomy)
        {
            yield return $"{glyphs.Median} median";
            yield return $"{glyphs.Band} band, {PlotText.Level(p.Curve[0].Body)}";
        }

        foreach (var item in Aims(p, glyphs, roomy).Concat(PictureNotes.Of(p with { Readings = [.. p.Readings.Where(r => !r.Doubted)] })))
        {
            yield return item;
        }
    }

    private static IEnumerable<string> Aims(RunPicture p, ChartGlyphs glyphs, bool roomy)
    {
        if (p.Next is { Expected: var e } next)
        {
            var expected = roomy ? $": {PlotText.Number(e.Median)} ({PlotText.Number(e.Low)} to {PlotText.Number(e.High)})" : "";
            yield return $"{glyphs.Next} " + glyphs.Show($"next {PlotText.Percent(next.To)}{expected}");
        }

        if (p.Target is { } target && roomy)
        {
            yield return $"{glyphs.Target} " + glyphs.Show($"target {PlotText.Number(target.Low)} to {PlotText.Number(target.High)}");
        }

        if (p.Limit is { } limit)
        {
            yield return $"{glyphs.Limit} " + glyphs.Show($"limit {PlotText.Percent(limit.Dose)}: {limit.Why}");
        }
    }

    private static IEnumerable<string> Several(IReadOnlyList<RunPicture> pictures, ChartGlyphs glyphs)
    {
        const int nameColumns = 24;
        yield return "A reading, a settled";
        foreach (var (i, p) in pictures.Index())
        {
            yield return $"{(char)('A' + (i % 26))} " + PlainText.Shorten(glyphs.Show(p.Name ?? "without a name"), nameColumns, glyphs.Ellipsis);
        }

        if (pictures.Any(p => p.Limit is not null))
        {
            yield return $"{glyphs.Limit} limit";
        }
    }
}
