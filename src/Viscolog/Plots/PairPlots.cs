using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The pictures of a run with two thickeners.</summary>
internal static class PairPlots
{
    public static Picture Of(PairPicture run, PairKind kind) => kind == PairKind.Map ? PairMapPlot.Of(run) : PairSlicePlot.Of(run);
}

/// <summary>Which picture of a run with two thickeners.</summary>
internal enum PairKind
{
    /// <summary>Body and string over each dose.</summary>
    Dose,

    /// <summary>The two doses with contours of body and the band of the string.</summary>
    Map,
}

/// <summary>The map of two doses: contours of body, the bands of body and string, the path so far, and where the plan leads.</summary>
internal static class PairMapPlot
{
    public static Picture Of(PairPicture run)
    {
        var body = Map(run.Map, run.Map.Bodies.Select(b => b.MilliPascalSeconds));
        var lengths = Map(run.Map, run.Map.Lengths.Select(l => l.Millimeters));
        Element[] elements =
        [
            new Element.Contours(body, [.. Ticks.Logarithmic(body.Values.Min(), body.Values.Max())])
            {
                Key = new("body", $"body at the number beside it, {PlotText.Unit}"),
            },
            .. Bands(run, body, lengths),
            .. Path(run),
        ];
        var subtitle = $"contours: body at {PlotText.Celsius(run.ReferenceTemperature)}, {PlotText.Unit} · medians as believed now";
        var (across, up) = (Dose(run.BodyThickener, body.Across), Dose(run.StringThickener, body.Up));
        return new(RunFrame.Name(run.Name), subtitle, [new(across, up, [.. elements])]);
    }

    private static Field Map(PairMap map, IEnumerable<double> values)
        => new([.. map.BodyDoses.Select(d => d.Percent)], [.. map.StringDoses.Select(d => d.Percent)], [.. values]);

    private static Axis Dose(string thickener, ImmutableArray<double> doses)
    {
        var title = $"Dose of {PlainText.Shorten(PlainText.Clean(thickener), 24)}, g per 100 g of base (%)";
        return new(title, $"dose of {PlainText.Shorten(thickener, 16)}, %", 0, doses[^1]) { Room = RunFrame.Room };
    }

    private static IEnumerable<Element> Bands(PairPicture run, Field body, Field lengths)
    {
        if (run.Target is { Low.MilliPascalSeconds: var least, High.MilliPascalSeconds: var most })
        {
            var key = new LegendLine("edges of the body's band", "body in band");
            yield return new Element.InBand(Meaning.BodyInBand, body, least, most) { Key = key };
        }

        if (run.TargetString is { Low.Millimeters: var low, High.Millimeters: var high })
        {
            var key = new LegendLine("edges of the string's band, mm", "string in band");
            yield return new Element.InBand(Meaning.StringInBand, lengths, low, high) { Key = key };
        }
    }

    private static IEnumerable<Element> Path(PairPicture run)
    {
        static Spot At(PairPlace place) => new(place.Body.Percent, place.Second.Percent);
        ImmutableArray<Spot> path = [.. run.Path.Select(p => At(p.Place))];
        yield return new Element.Line(Meaning.Path, null, path) { Key = new("path so far") };
        yield return new Element.Marks(Meaning.Reading, null, path) { Key = new(null, "path") };
        if (run.End is { } end)
        {
            var from = run.Next is { } now ? At(now) : path[^1];
            yield return new Element.Line(Meaning.PlanWay, null, [from, At(end)]) { Key = new("the plan's end") };
            yield return new Element.Marks(Meaning.PlanEnd, null, [At(end)]) { Key = new(null, "plan's end") };
        }

        if (run.Next is { } next)
        {
            yield return new Element.Arrow(path[^1], At(next), null, []) { Key = new("next addition", "next") };
        }
    }
}

/// <summary>Four panels: body above and string below, over the dose of either thickener.</summary>
internal static class PairSlicePlot
{
    public static Picture Of(PairPicture run)
    {
        var body = new Quantity(
            s => s.Body.Median.MilliPascalSeconds,
            s => Span.Of(s.Dose.Percent, s.Body),
            p => p.Bodies.Select(b => b.MilliPascalSeconds))
        {
            Target = run.Target is { } band ? Element.Target.Around(band, null) : null,
        };
        var strings = new Quantity(
            s => s.Length.Median.Millimeters,
            s => new(s.Dose.Percent, s.Length.Low.Millimeters, s.Length.High.Millimeters),
            p => p.Lengths.Select(l => l.Millimeters))
        {
            Target = run.TargetString is { } wanted ? new(Math.Max(wanted.Low.Millimeters, 0.5), wanted.High.Millimeters, null) : null,
        };
        var above = body.Axis(run, $"Viscosity at {PlotText.Celsius(run.ReferenceTemperature)}, {PlotText.Unit}") with { From = 0.53 };
        var below = strings.Axis(run, "String length, mm") with { To = 0.47 };
        var (left, right) = (Across(run.OverBody) with { To = 0.48 }, Across(run.OverString) with { From = 0.52 });
        var (first, second) = (PlotText.Percent(run.OverBody.OtherDose), PlotText.Percent(run.OverString.OtherDose));
        return new(RunFrame.Name(run.Name), $"left: {run.StringThickener} stays at {first} · right: {run.BodyThickener} stays at {second}",
        [
            new(left, above, [.. body.Over(run, run.OverBody, isTitled: true)]),
            new(left, below, [.. strings.Over(run, run.OverBody, isTitled: false)]),
            new(right, above, [.. body.Over(run, run.OverString, isTitled: false)]),
            new(right, below, [.. strings.Over(run, run.OverString, isTitled: false)]),
        ]);
    }

    private static Axis Across(PairSlice slice)
    {
        var title = $"Dose of {PlainText.Shorten(PlainText.Clean(slice.Thickener), 20)}, %";
        return new(title, title, 0, slice.Samples[^1].Dose.Percent) { Room = 0.03, HasGrid = false };
    }

    /// <summary>Body or string.</summary>
    /// <param name="Median">The middle of what is known of it at a dose.</param>
    /// <param name="Edges">Its interval.</param>
    /// <param name="Read">The readings of it.</param>
    private sealed record Quantity(Func<PairSample, double> Median, Func<PairSample, Span> Edges, Func<PairPoint, IEnumerable<double>> Read)
    {
        public Element.Target? Target { get; init; }

        public Axis Axis(PairPicture run, string title)
        {
            double[] wanted = Target is null ? [] : [Target.Low, Target.High];
            var known = run.OverBody.Samples.Concat(run.OverString.Samples).Select(Median);
            var (low, high) = Plots.Axis.Around([.. known, .. run.Path.SelectMany(Read), .. wanted], 0.08);
            return new(title, title, low, high, IsLogarithmic: true);
        }

        public IEnumerable<Element> Over(PairPicture run, PairSlice slice, bool isTitled)
        {
            var isBody = ReferenceEquals(slice, run.OverBody);
            double Dose(PairPlace place) => (isBody ? place.Body : place.Second).Percent;
            bool IsHere(PairPlace place) => Math.Abs((isBody ? place.Second : place.Body).Percent - slice.OtherDose.Percent) < 1e-6;
            var points = run.Path.ToLookup(p => IsHere(p.Place), p => Read(p).Select(v => new Spot(Dose(p.Place), v)));
            Element Named(Element element, string text) => isTitled ? element with { Key = new(text) } : element;
            var level = PlotText.Level(slice.Samples[0].Body);
            var middle = slice.Samples.Select(s => new Spot(s.Dose.Percent, Median(s)));
            return
            [
                .. Target is { } target ? [target] : Array.Empty<Element>(),
                Named(new Element.Area(Meaning.Found, null, [.. slice.Samples.Select(Edges)]), $"band of the mean, {level}"),
                Named(new Element.Line(Meaning.Median, null, [.. middle]), "median"),
                Named(new Element.Marks(Meaning.Reading, null, [.. points[true].SelectMany(p => p)]), "reading at this dose of the other"),
                Named(new Element.Marks(Meaning.Elsewhere, null, [.. points[false].SelectMany(p => p)]), "at another dose of it"),
            ];
        }
    }
}
