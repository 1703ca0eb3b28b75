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

/// <summary>The map of two doses: contours of body, the bands of body and string, the path so far, the next addition and the end of the plan.</summary>
internal static class PairMapPlot
{
    public static Picture Of(PairPicture run)
    {
        Field body = Map(run.Map, run.Map.Bodies.Select(b => b.MilliPascalSeconds)), lengths = Map(run.Map, run.Map.Lengths.Select(l => l.Millimeters));
        Element[] elements =
        [
            new Element.Contours(body, [.. Ticks.Logarithmic(body.Values.Min(), body.Values.Max())])
            {
                Key = new("body", $"body at the number beside it, {PlotText.Unit}"),
            },
            .. run.Target is { } band
                ? [new Element.InBand(Meaning.BodyInBand, body, band.Low.MilliPascalSeconds, band.High.MilliPascalSeconds) { Key = new("edges of the body's band", "body in band") }]
                : Array.Empty<Element>(),
            .. run.TargetString is { } strings
                ? [new Element.InBand(Meaning.StringInBand, lengths, strings.Low.Millimeters, strings.High.Millimeters) { Key = new("edges of the string's band, mm", "string in band") }]
                : Array.Empty<Element>(),
            .. Path(run),
        ];
        var subtitle = $"contours: body at {PlotText.Celsius(run.ReferenceTemperature)}, {PlotText.Unit} · medians as believed now";
        return new(RunFrame.Name(run.Name), subtitle, [new(Dose(run.BodyThickener, body.Across), Dose(run.StringThickener, body.Up), [.. elements])]);
    }

    private static Field Map(PairMap map, IEnumerable<double> values)
        => new([.. map.BodyDoses.Select(d => d.Percent)], [.. map.StringDoses.Select(d => d.Percent)], [.. values]);

    private static Axis Dose(string thickener, ImmutableArray<double> doses) => new(
        $"Dose of {PlainText.Shorten(PlainText.Clean(thickener), 24)}, g per 100 g of base (%)", $"dose of {PlainText.Shorten(thickener, 16)}, %", 0, doses[^1])
    { Room = RunFrame.Room };

    private static IEnumerable<Element> Path(PairPicture run)
    {
        static Spot At(PairPlace place) => new(place.Body.Percent, place.Second.Percent);
        ImmutableArray<Spot> path = [.. run.Path.Select(p => At(p.Place))];
        yield return new Element.Line(Meaning.Path, null, path) { Key = new("path so far") };
        yield return new Element.Marks(Meaning.Reading, null, path) { Key = new(null, "path") };
        if (run.End is { } end)
        {
            yield return new Element.Line(Meaning.PlanWay, null, [run.Next is { } now ? At(now) : path[^1], At(end)]) { Key = new("the plan's end") };
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
        var slices = new[] { (Slice: run.OverBody, Across: Across(run.OverBody, 0, 0.48)), (Slice: run.OverString, Across: Across(run.OverString, 0.52, 1)) };
        var samples = run.OverBody.Samples.AddRange(run.OverString.Samples);
        var up = Up($"Viscosity at {PlotText.Celsius(run.ReferenceTemperature)}, {PlotText.Unit}", 0.53, 1,
        [
            .. samples.Select(s => s.Body.Median.MilliPascalSeconds), .. run.Path.SelectMany(p => p.Bodies).Select(b => b.MilliPascalSeconds),
            .. run.Target is { } band ? [band.Low.MilliPascalSeconds, band.High.MilliPascalSeconds] : Array.Empty<double>(),
        ]);
        var down = Up("String length, mm", 0, 0.47,
        [
            .. samples.Select(s => s.Length.Median.Millimeters), .. run.Path.SelectMany(p => p.Lengths).Select(l => l.Millimeters),
            .. run.TargetString is { } strings ? [Math.Max(strings.Low.Millimeters, 0.5), strings.High.Millimeters] : Array.Empty<double>(),
        ]);
        var subtitle = $"left: {run.StringThickener} stays at {PlotText.Percent(run.OverBody.OtherDose)} · right: {run.BodyThickener} stays at {PlotText.Percent(run.OverString.OtherDose)}";
        return new(RunFrame.Name(run.Name), subtitle, [.. slices.SelectMany(s => new[] { Body(run, s.Slice, s.Across, up), Strings(run, s.Slice, s.Across, down) })]);
    }

    private static Axis Across(PairSlice slice, double from, double to)
        => new($"Dose of {PlainText.Shorten(PlainText.Clean(slice.Thickener), 20)}, %", "dose, %", 0, slice.Samples[^1].Dose.Percent) { Room = 0.03, From = from, To = to, HasGrid = false };

    private static Axis Up(string title, double from, double to, double[] values)
    {
        var (low, high) = Axis.Around(values, 0.08);
        return new(title, title, low, high, IsLogarithmic: true) { From = from, To = to };
    }

    private static Panel Body(PairPicture run, PairSlice slice, Axis across, Axis up)
    {
        var isLeft = ReferenceEquals(slice, run.OverBody);
        Element[] elements =
        [
            .. run.Target is { } band ? [new Element.Target(band.Low.MilliPascalSeconds, band.High.MilliPascalSeconds, null)] : Array.Empty<Element>(),
            new Element.Area(Meaning.Found, null, [.. slice.Samples.Select(s => new Span(s.Dose.Percent, s.Body.Low.MilliPascalSeconds, s.Body.High.MilliPascalSeconds))])
            {
                Key = isLeft ? new($"band of the mean, {PlotText.Level(slice.Samples[0].Body)}") : null,
            },
            new Element.Line(Meaning.Median, null, [.. slice.Samples.Select(s => new Spot(s.Dose.Percent, s.Body.Median.MilliPascalSeconds))]) { Key = isLeft ? new("median") : null },
            .. Marks(run, slice, isLeft, p => p.Bodies.Select(b => b.MilliPascalSeconds)),
        ];
        return new(across, up, [.. elements]);
    }

    private static Panel Strings(PairPicture run, PairSlice slice, Axis across, Axis up)
    {
        Element[] elements =
        [
            .. run.TargetString is { } strings ? [new Element.Target(Math.Max(strings.Low.Millimeters, 1e-3), strings.High.Millimeters, null)] : Array.Empty<Element>(),
            new Element.Area(Meaning.Found, null, [.. slice.Samples.Select(s => new Span(s.Dose.Percent, s.Length.Low.Millimeters, s.Length.High.Millimeters))]),
            new Element.Line(Meaning.Median, null, [.. slice.Samples.Select(s => new Spot(s.Dose.Percent, s.Length.Median.Millimeters))]),
            .. Marks(run, slice, isTitled: false, p => p.Lengths.Select(l => l.Millimeters)),
        ];
        return new(across, up, [.. elements]);
    }

    /// <summary>Readings at this dose of the other thickener, and at another.</summary>
    private static IEnumerable<Element> Marks(PairPicture run, PairSlice slice, bool isTitled, Func<PairPoint, IEnumerable<double>> values)
    {
        var isBody = ReferenceEquals(slice, run.OverBody);
        double At(PairPlace place) => (isBody ? place.Body : place.Second).Percent;
        var points = run.Path.ToLookup(p => Math.Abs((isBody ? p.Place.Second : p.Place.Body).Percent - slice.OtherDose.Percent) < 1e-6);
        Element.Marks Of(Meaning meaning, bool isHere, string title)
            => new(meaning, null, [.. points[isHere].SelectMany(p => values(p).Select(v => new Spot(At(p.Place), v)))]) { Key = isTitled ? new(title) : null };
        return [Of(Meaning.Reading, isHere: true, "reading at this dose of the other"), Of(Meaning.Elsewhere, isHere: false, "at another dose of it")];
    }
}
