using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Plots;

/// <summary>Body over dose: one run in full, or several laid over each other.</summary>
internal static class DosePlot
{
    /// <summary>The most limits or targets of several runs that are named in the picture; more stand in the legend.</summary>
    private const int MostNamed = 3;

    public static Picture Of(IReadOnlyList<RunPicture> runs)
    {
        var (frame, window) = (new RunFrame(runs), DoseWindow.Of(runs));
        Element[] elements =
        [
            .. Limits(runs, frame),
            .. Targets(runs, frame),
            .. frame.IsAlone ? One(runs[0]) : Several(runs),
            .. frame.Keys(KeyLook.LineAndMark),
        ];
        string[] notes = frame.IsAlone ? [.. Lacks(runs[0])] : [];
        var others = frame.IsAlone ? Doubts(runs[0]) : [Say("filled: readings, open: settled, crossed: doubted")];
        return new(frame.Title, frame.Subtitle(notes.Concat(others)),
        [
            new(frame.Dose(window.Dose), frame.Viscosity(window.Low, window.High), [.. elements])
            {
                Nothing = runs.All(p => p.Readings.IsEmpty && p.Steps.IsEmpty && p.Curve.IsEmpty)
                    ? Say("nothing to show yet: the first reading starts the picture")
                    : null,
            },
        ])
        { Notes = [.. notes] };
    }

    /// <summary>The picture of one run.</summary>
    public static Picture Of(RunPicture run) => Of([run]);

    private static IEnumerable<Element> One(RunPicture p)
    {
        if (!p.Curve.IsEmpty)
        {
            var (reading, body) = (PlotText.Level(p.Curve[0].Reading), PlotText.Level(p.Curve[0].Body));
            yield return Band(p, Meaning.ReadingBand, null, c => c.Reading) with { Key = new(Say($"band of a reading, {reading}")) };
            yield return Band(p, Meaning.Band, null, c => c.Body) with
            {
                Key = new(Say($"band of the mean, {body}"), null, Say($"band, {body}", "curve")),
            };
            yield return Median(p, null) with { Key = new(Say("median curve"), null, Say("median")) };
        }

        foreach (var element in Run(p, null))
        {
            yield return element;
        }
    }

    private static IEnumerable<Element> Several(IReadOnlyList<RunPicture> runs)
    {
        var bands = runs.Select((p, i) => Band(p, Meaning.Band, i, c => c.Body));
        return [.. bands, .. runs.SelectMany((p, i) => Run(p, i).Prepend(Median(p, i)))];
    }

    private static Element.Area Band(RunPicture p, Meaning meaning, int? of, Func<CurveSample, Estimate> edges)
        => new(meaning, of, [.. p.Curve.Select(c => Span.Of(c.Dose.Percent, edges(c)))]);

    private static Element.Line Median(RunPicture p, int? of)
        => new(Meaning.Median, of, [.. p.Curve.Select(c => Spot.Of(c.Dose, c.Body.Median))]);

    /// <summary>What is advised, settled and read.</summary>
    private static IEnumerable<Element> Run(RunPicture p, int? of)
    {
        foreach (var (i, down) in p.LetDowns.Index())
        {
            yield return new Element.Arrow(Meaning.LetDown, of, Spot.Of(down.From, down.Before), Spot.Of(down.To, down.After), null, [])
            {
                Key = of is null && i == 0 ? new(Say("base added"), Say("base added")) : null,
            };
        }

        if (p.Next is { } next)
        {
            yield return Arrow(next, of);
        }

        // Several runs have their marks of settled values even while there are none, so that readings keep their letters.
        if (!p.Steps.IsEmpty || of is not null)
        {
            yield return new Element.Bars(Meaning.Settled, of, [.. p.Steps.Select(s => Span.Of(s.Dose.Percent, s.Settled))]);
            yield return new Element.Marks(Meaning.Settled, of, [.. p.Steps.Select(s => Spot.Of(s.Dose, s.Settled.Median))])
            {
                Key = of is null ? new(Say($"settled value, {PlotText.Level(p.Steps[0].Settled)}"), Say("settled")) : null,
            };
        }

        foreach (var marks in RunFrame.Readings(p.Readings, of, r => Spot.Of(r.Dose, r.Value)))
        {
            yield return marks;
        }
    }

    private static Element.Arrow Arrow(NextIncrement next, int? of)
    {
        var e = next.Expected;
        var (median, low, high) = (PlotText.Number(e.Median), PlotText.Number(e.Low), PlotText.Number(e.High));
        var (isBase, to) = (next.To < next.From, PlotText.Percent(next.To));
        var lead = isBase ? Say($"next: base, to {to}") : Say($"next: to {to}");
        var brief = isBase ? Say($"next base, {to}") : Say($"next {to}", "addition");
        return new(Meaning.Next, of, Spot.Of(next.From, next.Body), Spot.Of(next.To, e.Median), Span.Of(next.To.Percent, e),
            of is null ? [lead, Say($"expect {median} {PlotText.Unit}"), Say($"{PlotText.Level(e)}: {low} to {high}")] : [])
        {
            Key = of is null ? new(null, brief, Say($": {median} ({low} to {high})")) : null,
        };
    }

    /// <summary>
    /// Regions of several runs would hide each other: the first is shaded, as beyond it some run is wrong; the others are lines.
    /// </summary>
    private static IEnumerable<Element.Limit> Limits(IReadOnlyList<RunPicture> runs, RunFrame frame)
    {
        var groups = runs.Index().Where(r => r.Item.Limit is not null).GroupBy(r => r.Item.Limit!)
            .Select(g => (Limit: g.Key, Places: g.Select(r => r.Index).ToArray())).OrderBy(g => g.Limit.Dose.Percent).ToArray();
        foreach (var (row, (limit, places)) in groups.Index())
        {
            var (dose, why) = (PlotText.Percent(limit.Dose), LimitWords.Of(limit));
            if (places.Length == runs.Count && frame.IsOneThickener)
            {
                var key = new LegendLine(null, frame.IsAlone ? Say($"limit {dose}: {why}") : Say("limit"));
                var (full, brief) = (Say($"beyond the limit of {dose}: {why}"), Say($"limit: {why}"));
                yield return new(null, limit.Dose.Percent, full, brief) { Key = key };
                continue;
            }

            // One thickener's limit says nothing of another's doses, so that nothing is shaded where thickeners differ.
            var whose = frame.Whose(places);
            var isShaded = row == 0 && frame.IsOneThickener;
            var isNamed = isShaded || groups.Length <= MostNamed;
            var text = isShaded ? Say($"beyond the limit of {dose}, {whose}: {why}") : Say($"limit of {dose}, {whose}");
            yield return new(
                places[0], limit.Dose.Percent, isNamed ? text : null,
                isShaded ? Say($"limit of {whose}: {why}") : RunFrame.Letters(places, 'A'))
            {
                IsShaded = isShaded,
                Key = new(isNamed ? null : text, Say($"limit {RunFrame.Letters(places, 'A')} {dose}")),
            };
        }
    }

    private static IEnumerable<Element.Target> Targets(IReadOnlyList<RunPicture> runs, RunFrame frame)
    {
        var groups = runs.Index().Where(r => r.Item.Target is not null).GroupBy(r => r.Item.Target!)
            .Select(g => (Band: g.Key, Places: g.Select(r => r.Index).ToArray())).ToArray();
        foreach (var (band, places) in groups)
        {
            var range = PlotText.Stated(band.Low.MilliPascalSeconds, band.High.MilliPascalSeconds);
            var isCommon = places.Length == runs.Count;
            var whose = isCommon ? Say("target") : Say($"target of {frame.Whose(places)}");
            var value = $"{PlotText.Stated(band.Aim.MilliPascalSeconds)} {PlotText.Unit} ({range})";
            var (isNamed, letters) = (groups.Length <= MostNamed, RunFrame.Letters(places, 'A'));
            yield return Element.Target.Around(band, isNamed ? whose : null, isCommon ? null : places[0]) with
            {
                Value = value,
                Word = isCommon ? Say("target") : Say($"target {letters}"),
                Key = frame.IsAlone ? new(null, null, Say($"target {range}"))
                    : new(isNamed ? null : $"{whose} {value}", null, isCommon ? null : Say($"target {letters} {range}")),
            };
        }
    }

    /// <summary>What the picture of a run cannot show.</summary>
    private static IEnumerable<string> Lacks(RunPicture p)
    {
        if (p.Readings.IsEmpty && p.Steps.IsEmpty)
        {
            yield return Say("no readings yet");
        }

        if (p.Curve.IsEmpty)
        {
            yield return Say("no curve yet");
        }

        if (p.Target is null)
        {
            yield return Say("no target given");
        }
    }

    private static IEnumerable<string> Doubts(RunPicture p) => p.Readings.Count(r => r.Doubted) switch
    {
        0 => [],
        1 => [Say("1 doubted reading")],
        var doubted => [Say($"{doubted} doubted readings")],
    };
}

/// <summary>The part of the dose–viscosity plane that a picture shows.</summary>
/// <param name="Dose">The greatest dose, %; the least is 0.</param>
/// <param name="Low">The least viscosity, mPa·s.</param>
/// <param name="High">The greatest viscosity, mPa·s.</param>
internal sealed record DoseWindow(double Dose, double Low, double High)
{
    /// <summary>How far beyond readings and curve an uncertain band may push the axis; wider bands run out of the picture.</summary>
    private const double BandReach = 3;

    /// <summary>The share of the width kept for the region beyond the dose limit, so that its reason fits in.</summary>
    private const double LimitShare = 0.2;

    /// <summary>A window that holds all that is certain in the pictures, and bands as far as they do not drown it.</summary>
    public static DoseWindow Of(IReadOnlyList<RunPicture> pictures)
    {
        double[] firm = [.. pictures.SelectMany(Firm).Select(v => v.MilliPascalSeconds)];
        if (firm.Length == 0)
        {
            firm = [100, 100_000];
        }

        double[] loose = [.. pictures.SelectMany(Loose).Select(v => v.MilliPascalSeconds)];
        var low = Math.Max(firm.Min() / BandReach, loose.Append(firm.Min()).Min());
        var high = Math.Min(firm.Max() * BandReach, loose.Append(firm.Max()).Max());
        var pad = Math.Max(0.06 * Math.Log(high / low), 0.05);
        return new(DoseEnd(pictures), Math.Max(low * Math.Exp(-pad), 1e-9), Math.Min(high * Math.Exp(pad), 1e300));
    }

    private static double DoseEnd(IReadOnlyList<RunPicture> pictures)
    {
        var end = pictures.SelectMany(Doses).Select(d => d.Percent).DefaultIfEmpty(0).Max() * 1.03;
        var limits = pictures.Select(p => p.Limit?.Dose.Percent ?? 0).DefaultIfEmpty(0).Max();
        end = Math.Max(end, limits / (1 - LimitShare));
        return end > 0 ? end : 1;
    }

    private static IEnumerable<Dose> Doses(RunPicture p)
    {
        var doses = p.Readings.Select(r => r.Dose).Concat(p.Steps.Select(s => s.Dose)).Concat(p.Curve.Select(c => c.Dose));
        return p.Next is { } next ? doses.Append(next.To).Append(next.From) : doses;
    }

    private static IEnumerable<Viscosity> Firm(RunPicture p)
    {
        return
        [
            .. p.Readings.Select(r => r.Value), .. p.Steps.Select(s => s.Settled.Median), .. p.Curve.Select(c => c.Body.Median),
            .. p.Target is { } target ? [target.Low, target.High] : Array.Empty<Viscosity>(),
            .. p.LetDowns.SelectMany(d => new[] { d.Before, d.After }),
            .. p.Next is { } next ? [next.Body, next.Expected.Median] : Array.Empty<Viscosity>(),
        ];
    }

    private static IEnumerable<Viscosity> Loose(RunPicture p)
    {
        var all = p.Curve.Select(c => c.Reading).Concat(p.Curve.Select(c => c.Body)).Concat(p.Steps.Select(s => s.Settled));
        all = p.Next is { } next ? all.Append(next.Expected) : all;
        return all.SelectMany(e => new[] { e.Low, e.High });
    }
}
