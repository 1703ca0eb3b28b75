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
        var targets = runs.Index().Where(r => r.Item.TargetString is not null).GroupBy(r => r.Item.TargetString!)
            .Select(g => (Band: g.Key, Places: g.Select(r => r.Index).ToArray())).ToList();
        var doses = runs.SelectMany(p => p.Strings.Select(s => s.Dose).Concat(p.Steps.Select(s => s.Dose))).Select(d => d.Percent);
        var lengths = runs.SelectMany(p => p.Strings).Select(s => s.Length.Millimeters)
            .Concat(targets.Select(t => t.Band.High.Millimeters));
        Element[] elements =
        [
            .. targets.Select(t => Target(t.Band, t.Places, t.Places.Length == runs.Count ? null : frame)),
            .. runs.Select((p, i) => Read(p, frame.Of(i))),
            .. frame.Keys(KeyLook.Mark),
        ];
        var count = runs.Sum(p => p.Strings.Length);
        return new(frame.Title, frame.Subtitle([count == 1 ? Say("1 string length") : Say($"{count} string lengths")]),
        [
            new(frame.Dose(End(doses, 1)), new(Say("String length, mm"), Say("string length, mm"), 0, End(lengths, 50)), [.. elements])
            {
                Nothing = count == 0 ? Say("nothing to show yet: no string length was read") : null,
            },
        ]);
    }

    /// <param name="band">The lengths.</param>
    /// <param name="places">The runs that want them.</param>
    /// <param name="frame">How they are named; null where all want the same.</param>
    private static Element.Target Target(StringBand band, int[] places, RunFrame? frame)
    {
        var range = $"{PlotText.Stated(band.Low.Millimeters, band.High.Millimeters)} mm";
        var text = frame is null ? Say("wanted:") : Say($"wanted for {frame.Whose(places)}:");
        var letters = RunFrame.Letters(places, 'a');
        return new(frame is null ? null : places[0], band.Low.Millimeters, band.High.Millimeters, text)
        {
            Word = frame is null ? null : Say($"wanted {letters}"),
            Value = range,
            Key = new(null, frame is null ? $"{text} {range}" : Say($"wanted {letters}: {range}")),
        };
    }

    private static Element.Marks Read(RunPicture run, int? of)
        => new(Meaning.Reading, of, [.. run.Strings.Select(s => new Spot(s.Dose.Percent, s.Length.Millimeters))])
        {
            Key = of is null ? new(Say("string read"), Say("string read")) : null,
        };

    private static double End(IEnumerable<double> values, double least)
        => values.DefaultIfEmpty(0).Max() is var most and > 0 ? Beyond * most : least;
}
