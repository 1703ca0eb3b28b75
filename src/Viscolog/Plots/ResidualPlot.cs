using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>How far each reading lies off what was expected, over its dose.</summary>
internal static class ResidualPlot
{
    /// <summary>Of normal scatter, about 95 % lies within.</summary>
    private const double Usual = 2;

    public static Picture Of(IReadOnlyList<RunPicture> runs)
    {
        var frame = new RunFrame(runs);
        var readings = runs.SelectMany(p => p.Readings).ToList();
        var dose = readings.Select(r => r.Dose.Percent).DefaultIfEmpty(0).Max();
        var reach = 1.25 * readings.Select(r => Math.Abs(r.StandardizedResidual)).Where(double.IsFinite).Append(Usual).Max();
        var placed = runs.Select(p => p.Readings.Where(r => double.IsFinite(r.StandardizedResidual)));
        Element[] elements =
        [
            new Element.Level(Meaning.Expected, 0) { Key = new(Say("as expected")) },
            new Element.Level(Meaning.Usual, Usual)
            {
                Key = new(Say("±2: about 95 % of readings are between"), Say("about 95 % are between")),
            },
            new Element.Level(Meaning.Usual, -Usual),
            .. placed.SelectMany((p, i) => RunFrame.Readings(p, frame.Of(i), r => new(r.Dose.Percent, r.StandardizedResidual))),
            .. frame.Keys(KeyLook.Mark),
        ];
        var across = frame.Dose((dose > 0 ? dose : 1) * 1.08);
        var (title, brief) = (Say("Standardised residual, in repeatabilities"), Say("off the expected, in repeatabilities"));
        var up = new Axis(title, brief, -reach, reach);
        return new(frame.Title, frame.Subtitle(Notes(readings)),
        [
            new(across, up with { Label = Signed }, [.. elements])
            {
                Nothing = readings.Count == 0 ? Say("nothing to show yet: no readings") : null,
            },
        ]);
    }

    /// <summary>With a minus sign as wide as the plus.</summary>
    private static string Signed(double value) => value.ToString("0.##", Numbers).Replace('-', '\u2212');

    private static IEnumerable<string> Notes(List<PicturedReading> readings)
    {
        yield return readings.Count == 1 ? Say("1 reading") : Say($"{readings.Count} readings");
        if (readings.Count(r => r.Doubted) is var doubted and > 0)
        {
            yield return Say($"{doubted} doubted");
        }
    }
}
