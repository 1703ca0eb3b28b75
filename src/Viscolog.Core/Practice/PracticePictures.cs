using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Limits;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>A game that has ended as a picture of a run, with the hidden curve in the place of the estimated one.</summary>
public static class PracticePictures
{
    private const int Samples = 81;

    /// <summary>The picture of a path.</summary>
    /// <param name="path">The path.</param>
    /// <param name="name">The player's name.</param>
    /// <param name="end">The dose at the right edge of the curve; at least the path's own greatest.</param>
    public static RunPicture Of(PracticePath path, string name, Dose end)
    {
        var run = path.Session.Run;
        return new(name, run.Thickeners[0].Name, run.ReferenceTemperatureInForce)
        {
            Target = path.Truth.Band,
            Curve = [.. path.Truth.Samples(end, Samples).Select(s => new CurveSample(s.Dose, Sharp(s.Body), Sharp(s.Body)))],
            Limit = Limit(path.Truth),
            Steps = [.. path.Steps.Select(s => new PicturedStep(s.Line.Number, s.Dose, Sharp(s.Settled), []))],
            LetDowns = PicturedLetDown.Among(path.Steps.Select(s => (s.Dose, s.Settled))),
            Readings = [.. path.Steps.Where(s => s.Line.Shown is not null)
                .Select(s => new PicturedReading(s.Line.Number, s.Dose, s.Line.Stood, s.Line.Shown!.Value, s.Body, 0, Doubted: false))],
        };
    }

    /// <summary>A dose that shows all of several paths and what lies beyond them.</summary>
    public static Dose End(IEnumerable<PracticePath> paths)
    {
        var all = paths.ToList();
        var truth = all[0].Truth;
        var reached = all.SelectMany(p => p.Steps).Max(s => s.Dose.Percent);
        double[] shown = [1.12 * reached, 1.2 * (truth.OverFrom ?? truth.Needed).Percent, 1.15 * (truth.Peak ?? Dose.None).Percent,
            truth.RangeTop.Percent];
        return Dose.FromPercent(Math.Min(shown.Max(), Math.Max(1.12 * reached, PotTruth.Furthest * truth.RangeTop.Percent)));
    }

    /// <summary>Where more is wrong in this pot, and why.</summary>
    public static DoseLimit Limit(PotTruth truth)
    {
        var limit = new DoseLimit(truth.RangeTop, new LimitReason.UsualRange());
        if (truth.FlatFrom is { } flat && flat < limit.Dose && flat >= truth.Needed)
        {
            limit = new(flat, new LimitReason.Flattens(IsBrief: true));
        }

        return truth.Peak is { } peak && peak <= limit.Dose
            ? new(peak, new LimitReason.Falls())
            : limit;
    }

    private static Estimate Sharp(Viscosity body) => new(body, body, body, Study.Level);
}
