using Viscolog.Core.Advising;
using Viscolog.Core.Pots;

namespace Viscolog.Plots;

/// <summary>String length over dose: what was read, and the lengths wanted.</summary>
internal static class StringPlot
{
    /// <summary>Room beyond the outermost value.</summary>
    private const double Beyond = 1.1;

    public static Picture Of(IReadOnlyList<RunPicture> runs)
    {
        var frame = new RunFrame(runs);
        StringBand[] targets = [.. runs.Select(p => p.TargetString).OfType<StringBand>().Distinct()];
        var doses = runs.SelectMany(p => p.Strings.Select(s => s.Dose).Concat(p.Steps.Select(s => s.Dose))).Select(d => d.Percent);
        var lengths = runs.SelectMany(p => p.Strings).Select(s => s.Length.Millimeters).Concat(targets.Select(t => t.High.Millimeters));
        Element[] elements =
        [
            .. targets.Select((t, row) => Target(t, row > 0 ? row : null)),
            .. runs.Select((p, i) => Read(p, frame.Of(i))),
            .. frame.Keys(KeyLook.Mark),
        ];
        var count = runs.Sum(p => p.Strings.Length);
        return new(frame.Title, frame.Subtitle([count == 1 ? "1 string length" : $"{count} string lengths"]),
        [
            new(frame.Dose(End(doses, 1)), new("String length, mm", "string length, mm", 0, End(lengths, 50)), [.. elements])
            {
                Nothing = count == 0 ? "nothing to show yet: no string length was read" : null,
            },
        ]);
    }

    private static Element.Target Target(StringBand band, int? row)
    {
        var text = $"wanted: {PlotText.Number(band.Low.Millimeters)} to {PlotText.Number(band.High.Millimeters)} mm";
        return new(band.Low.Millimeters, band.High.Millimeters, text) { Row = row, Key = new(null, text) };
    }

    private static Element.Marks Read(RunPicture run, int? of)
        => new(Meaning.Reading, of, [.. run.Strings.Select(s => new Spot(s.Dose.Percent, s.Length.Millimeters))])
        {
            Key = of is null ? new("string read", "string read") : null,
        };

    private static double End(IEnumerable<double> values, double least)
        => values.DefaultIfEmpty(0).Max() is var most and > 0 ? Beyond * most : least;
}
