using Viscolog.Text;

namespace Viscolog.Plots.Characters;

/// <summary>The lines beneath a chart in characters: what each mark means, and the numbers that the chart can only hint at.</summary>
internal static class CharLegend
{
    /// <summary>From this width on there is room for numbers.</summary>
    private const int NumbersFrom = 60;

    /// <summary>Columns of a run's name.</summary>
    private const int NameColumns = 24;

    private const string Gap = "  ";

    /// <summary>Items side by side, as many lines as are allowed.</summary>
    public static IReadOnlyList<string> Lines(Picture picture, ChartGlyphs glyphs, int width, int most)
    {
        var lines = new List<string>();
        foreach (var item in Items(picture, glyphs, width >= NumbersFrom).Distinct(StringComparer.Ordinal))
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

    /// <summary>In the order of their meanings.</summary>
    private static IEnumerable<string> Items(Picture picture, ChartGlyphs glyphs, bool roomy)
    {
        var elements = picture.Panels.SelectMany(p => p.Elements).OrderBy(e => e.Meaning).ToList();
        if (elements.Exists(e => e is Element.Marks { Meaning: Meaning.Settled, Of: not null }))
        {
            yield return Say("A reading, a settled");
        }

        foreach (var element in elements)
        {
            foreach (var item in Items(element, glyphs, roomy))
            {
                yield return item;
            }

            if (element.Meaning == Meaning.StringInBand && elements.Exists(e => e.Meaning == Meaning.BodyInBand))
            {
                yield return $"{ChartGlyphs.InAllBands} {glyphs.Show(Say("both", "bands"))}";
            }
        }

        foreach (var note in picture.Notes)
        {
            yield return glyphs.Show(note);
        }
    }

    private static IEnumerable<string> Items(Element element, ChartGlyphs glyphs, bool roomy)
    {
        if (element is Element.RunKey run)
        {
            var name = PlainText.Shorten(glyphs.Show(run.Key?.Short ?? ""), NameColumns, glyphs.Ellipsis);
            var letter = RunFrame.Letter(run.Place, run.Look == KeyLook.LineAndMark ? 'A' : 'a');
            yield return run.Look == KeyLook.Nothing ? name : $"{letter} {name}";
        }
        else if (element.Key is { } key && (key.Short + (roomy ? key.Roomy : "")) is { Length: > 0 } text)
        {
            yield return $"{glyphs.Sign(element)} {glyphs.Show(text)}";
        }

        if (element is Element.Marks { Meaning: Meaning.Settled, Of: null, Key.Short: not null })
        {
            yield return $"{glyphs.Both} {glyphs.Show(Say("both", "marks"))}";
        }

        foreach (var (i, (_, text)) in element is Element.Ends ends ? ends.Traces.Index() : [])
        {
            yield return $"{RunFrame.Letter(i)} {glyphs.Show(text)}";
        }
    }
}
