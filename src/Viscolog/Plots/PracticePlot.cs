using Viscolog.Core.Advising;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Plots;

/// <summary>Players on one practice pot side by side: the hidden curve, what each read, and where the pot was on its way to.</summary>
internal static class PracticePlot
{
    private const double Gap = 0.03;
    private const int CurveSamples = 121;

    /// <summary>Makes it.</summary>
    /// <param name="players">From one to three, all on the same pot.</param>
    public static Picture Of(IReadOnlyList<NamedPath> players)
    {
        var truth = players[0].Path.Truth;
        var end = PracticePictures.End(players.Select(p => p.Path));
        double[] values =
        [
            truth.Band.High.MilliPascalSeconds, .. truth.Samples(end, CurveSamples).Select(s => s.Body.MilliPascalSeconds),
            .. players.SelectMany(p => p.Path.Steps).SelectMany(s => new[] { s.Line.Shown ?? s.Settled, s.Settled })
                .Select(v => v.MilliPascalSeconds),
        ];
        var up = new Axis(Say($"Viscosity, {PlotText.Unit}"), PlotText.Unit, values.Min() * 0.8, values.Max() * 1.35, IsLogarithmic: true);
        var (constant, why) = (Shown.Duration(truth.TimeConstant), LimitWords.Of(PracticePictures.Limit(truth)));
        return new(
            PracticeWords.Title(players[0].Path.Session.Game),
            Say($"hidden curve '{PracticeWords.Family(truth)}' · time constant {constant} · shaded: {why}"),
            [.. players.Select((p, i) => new Panel(Across(players, i, end), up, [.. Elements(p.Path, end, isFirst: i == 0)]))]);
    }

    private static Axis Across(IReadOnlyList<NamedPath> players, int panel, Dose end)
    {
        var width = (1 - (Gap * (players.Count - 1))) / players.Count;
        var from = panel * (width + Gap);
        var player = players[panel];
        var name = PlainText.Shorten(PlainText.Clean(player.Name), 22) + ": " + PracticeWords.Ended(player.Path.Score.Verdict);
        return new(panel == 0 ? Say($"dose, % · {name}") : name, name, 0, end.Percent)
        {
            Room = 0.05,
            From = from,
            To = from + width,
            LeastStep = 1,
        };
    }

    private static IEnumerable<Element> Elements(PracticePath path, Dose end, bool isFirst)
    {
        LegendLine? Key(string text) => isFirst ? new(text) : null;
        var truth = path.Truth;
        var read = path.Steps.Where(s => s.Line.Shown is not null)
            .Select(s => (Step: s, At: Spot.Of(s.Dose, s.Line.Shown!.Value))).ToList();
        var early = read.Where(r => Math.Abs(r.Step.PercentToCome) > PracticeWords.EarlyPercent);
        return
        [
            new Element.Limit(null, PracticePictures.Limit(truth).Dose.Percent, null, null),
            Element.Target.Around(truth.Band, isFirst ? Say($"target {PlotText.Stated(truth.Band.Aim.MilliPascalSeconds)}") : null),
            new Element.Line(Meaning.Median, null, [.. truth.Samples(end, CurveSamples).Select(s => Spot.Of(s.Dose, s.Body))])
            {
                Key = Key(Say("hidden curve")),
            },
            .. early.Select((r, i) => new Element.Line(Meaning.ToCome, null, [r.At, Spot.Of(r.Step.Dose, r.Step.Settled)])
            {
                Key = i == 0 ? Key(Say("still to come")) : null,
            }),
            new Element.Line(Meaning.Link, null, [.. read.Select(r => r.At)]),
            .. PicturedLetDown.Among(path.Steps.Select(s => (s.Dose, s.Settled))).Select((d, i) => new Element.Arrow(
                Meaning.LetDown, null, Spot.Of(d.From, d.Before), Spot.Of(d.To, d.After), null, [])
            {
                Key = i == 0 ? Key(Say("base added")) : null,
            }),
            new Element.Marks(Meaning.Settled, null, [.. path.Steps.Select(s => Spot.Of(s.Dose, s.Settled))])
            {
                Key = Key(Say("settles at")),
            },
            new Element.Marks(Meaning.Reading, null, [.. read.Select(r => r.At)]) { Key = Key(Say("read", "mark")) },
            .. path.Steps.FirstOrDefault(s => s.IsOver) is { } over ? Over(path, Spot.Of(over.Dose, over.Settled)) : [],
        ];
    }

    private static Element[] Over(PracticePath path, Spot at) =>
    [
        new Element.Marks(Meaning.WentOver, null, [at]),
        new Element.Words(Meaning.WentOver, at, Say($"over at dose {path.Score.WentOverAt}"), -1),
    ];
}
