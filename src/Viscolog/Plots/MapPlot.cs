using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The map of two doses: contours of body, the bands of body and string, the path so far, and where the plan leads.</summary>
internal static class MapPlot
{
    public static Picture Of(RunPicture run)
    {
        var plane = run.Plane!;
        var body = Map(plane.Map, plane.Map.Bodies.Select(b => b.MilliPascalSeconds));
        var lengths = Map(plane.Map, plane.Map.Lengths.Select(l => l.Millimeters));
        Element[] elements =
        [
            new Element.Contours(body, [.. Ticks.Logarithmic(body.Values.Min(), body.Values.Max())])
            {
                Key = new(Say("body"), Say($"body at the number beside it, {PlotText.Unit}")),
            },
            .. Bands(run, body, lengths),
            .. Path(plane),
        ];
        var at = PlotText.Celsius(run.ReferenceTemperature);
        var subtitle = Say($"contours: body at {at}, {PlotText.Unit} · medians as estimated now");
        var (across, up) = (Dose(plane.OverBody.Thickener, body.Across), Dose(plane.OverString.Thickener, body.Up));
        return new(RunFrame.Name(run.Name), subtitle, [new(across, up, [.. elements])]);
    }

    private static Field Map(DoseMap map, IEnumerable<double> values)
        => new([.. map.BodyDoses.Select(d => d.Percent)], [.. map.StringDoses.Select(d => d.Percent)], [.. values]);

    private static Axis Dose(string thickener, ImmutableArray<double> doses)
    {
        var title = Say($"Dose of {PlainText.Shorten(PlainText.Clean(thickener), 24)}, g per 100 g of base (%)");
        return new(title, Say($"dose of {PlainText.Shorten(thickener, 16)}, %"), 0, doses[^1]) { Room = RunFrame.Room };
    }

    private static IEnumerable<Element> Bands(RunPicture run, Field body, Field lengths)
    {
        if (run.Target is { Low.MilliPascalSeconds: var least, High.MilliPascalSeconds: var most })
        {
            var key = new LegendLine(Say("edges of the body's band"), Say("body in band"));
            yield return new Element.InBand(Meaning.BodyInBand, body, least, most) { Key = key };
        }

        if (run.TargetString is { Low.Millimeters: var low, High.Millimeters: var high })
        {
            var key = new LegendLine(Say("edges of the string's band, mm"), Say("string in band"));
            yield return new Element.InBand(Meaning.StringInBand, lengths, low, high) { Key = key };
        }
    }

    private static IEnumerable<Element> Path(DosePlane plane)
    {
        static Spot At(Doses place) => new(place.Body.Percent, place.Strings.Percent);
        ImmutableArray<Spot> path = [.. plane.Path.Select(p => At(p.Place))];
        yield return new Element.Line(Meaning.Path, null, path) { Key = new(Say("path so far")) };
        yield return new Element.Marks(Meaning.Reading, null, path) { Key = new(null, Say("path", "map")) };
        foreach (var (i, (from, to)) in path.Zip(path.Skip(1)).Where(p => p.Second.X < p.First.X || p.Second.Y < p.First.Y).Index())
        {
            var key = i == 0 ? new LegendLine(Say("base added"), Say("base added")) : null;
            yield return new Element.Arrow(Meaning.LetDown, null, from, to, null, []) { Key = key };
        }

        if (plane.End is { } end)
        {
            var from = plane.Next is { } now ? At(now) : path[^1];
            yield return new Element.Line(Meaning.PlanWay, null, [from, At(end)]) { Key = new(Say("the plan's end")) };
            yield return new Element.Marks(Meaning.PlanEnd, null, [At(end)]) { Key = new(null, Say("plan's end")) };
        }

        if (plane.Next is { } next)
        {
            var key = new LegendLine(Say("next addition"), Say("next", "addition"));
            yield return new Element.Arrow(Meaning.Next, null, path[^1], At(next), null, []) { Key = key };
        }
    }
}

/// <summary>Four panels: body above and string below, over the dose of either thickener.</summary>
internal static class SlicePlot
{
    public static Picture Of(RunPicture run)
    {
        var plane = run.Plane!;
        var body = new Shown(
            s => s.Body.Median.MilliPascalSeconds,
            s => Span.Of(s.Dose.Percent, s.Body),
            p => p.Bodies.Select(b => b.MilliPascalSeconds))
        {
            Target = run.Target is { } band ? Element.Target.Around(band, null) : null,
        };
        var strings = new Shown(
            s => s.Length.Median.Millimeters,
            s => new(s.Dose.Percent, s.Length.Low.Millimeters, s.Length.High.Millimeters),
            p => p.Lengths.Select(l => l.Millimeters))
        {
            Target = run.TargetString is { } wanted
                ? new(null, Math.Max(wanted.Low.Millimeters, 0.5), wanted.High.Millimeters, null) : null,
        };
        var celsius = PlotText.Celsius(run.ReferenceTemperature);
        var above = body.Axis(plane, Say($"Viscosity at {celsius}, {PlotText.Unit}")) with { From = 0.53 };
        var below = strings.Axis(plane, Say("String length, mm")) with { To = 0.47 };
        var (left, right) = (Across(plane.OverBody) with { To = 0.48 }, Across(plane.OverString) with { From = 0.52 });
        var (first, second) = (PlotText.Percent(plane.OverBody.OtherDose), PlotText.Percent(plane.OverString.OtherDose));
        var subtitle = Say($"left: {plane.OverString.Thickener} stays at {first} · right: {plane.OverBody.Thickener} stays at {second}");
        return new(RunFrame.Name(run.Name), subtitle,
        [
            new(left, above, [.. body.Over(plane, plane.OverBody, isTitled: true)]),
            new(left, below, [.. strings.Over(plane, plane.OverBody, isTitled: false)]),
            new(right, above, [.. body.Over(plane, plane.OverString, isTitled: false)]),
            new(right, below, [.. strings.Over(plane, plane.OverString, isTitled: false)]),
        ]);
    }

    private static Axis Across(DoseSlice slice)
    {
        var title = Say($"Dose of {PlainText.Shorten(PlainText.Clean(slice.Thickener), 20)}, %");
        return new(title, title, 0, slice.Samples[^1].Dose.Percent) { Room = 0.03, HasGrid = false };
    }

    /// <summary>Body or string.</summary>
    /// <param name="Median">The middle of what is known of it at a dose.</param>
    /// <param name="Edges">Its interval.</param>
    /// <param name="Read">The readings of it.</param>
    private sealed record Shown(Func<SliceSample, double> Median, Func<SliceSample, Span> Edges, Func<PlanePoint, IEnumerable<double>> Read)
    {
        public Element.Target? Target { get; init; }

        public Axis Axis(DosePlane plane, string title)
        {
            double[] wanted = Target is null ? [] : [Target.Low, Target.High];
            var known = plane.OverBody.Samples.Concat(plane.OverString.Samples).Select(Median);
            var (low, high) = Plots.Axis.Around([.. known, .. plane.Path.SelectMany(Read), .. wanted], 0.08);
            return new(title, title, low, high, IsLogarithmic: true);
        }

        public IEnumerable<Element> Over(DosePlane plane, DoseSlice slice, bool isTitled)
        {
            var isBody = ReferenceEquals(slice, plane.OverBody);
            double Dose(Doses place) => (isBody ? place.Body : place.Strings).Percent;
            bool IsHere(Doses place) => Math.Abs((isBody ? place.Strings : place.Body).Percent - slice.OtherDose.Percent) < 1e-6;
            var points = plane.Path.ToLookup(p => IsHere(p.Place), p => Read(p).Select(v => new Spot(Dose(p.Place), v)));
            Element Named(Element element, string text) => isTitled ? element with { Key = new(text) } : element;
            var level = PlotText.Level(slice.Samples[0].Body);
            var middle = slice.Samples.Select(s => new Spot(s.Dose.Percent, Median(s)));
            var (here, elsewhere) = (points[true].SelectMany(p => p), points[false].SelectMany(p => p));
            return
            [
                .. Target is { } target ? [target] : Array.Empty<Element>(),
                Named(new Element.Area(Meaning.Found, null, [.. slice.Samples.Select(Edges)]), Say($"band of the mean, {level}")),
                Named(new Element.Line(Meaning.Median, null, [.. middle]), Say("median")),
                Named(new Element.Marks(Meaning.Reading, null, [.. here]), Say("reading at this dose of the other")),
                Named(new Element.Marks(Meaning.Elsewhere, null, [.. elsewhere]), Say("at another dose of it")),
            ];
        }
    }
}
