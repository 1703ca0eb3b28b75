using System.Collections.Immutable;
using Viscolog.Core.Charting;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>A control chart: values with limits, zones and signals above, moving ranges below.</summary>
/// <param name="Title">What the batches are of.</param>
/// <param name="Quantity">What was read, with its unit.</param>
/// <param name="Chart">The chart.</param>
internal sealed record TrendPicture(string Title, string Quantity, ControlChart Chart)
{
    private const int BatchColumns = 10;

    /// <summary>Whether the chart is on the log scale; then moving ranges are shown as a change in per cent.</summary>
    public bool IsLog => Chart.Scale == ChartScale.Log;

    private string Shared { get; } = Beginning([.. Chart.Points.Select(p => p.Batch)]);

    private ImmutableArray<string> Names
        => [.. Chart.Points.Select(p => PlainText.Shorten(PlainText.Clean(p.Batch[Shared.Length..]), BatchColumns))];

    private double[] Wanted => [.. new[] { Chart.Low, Chart.High }.OfType<double>()];

    public Picture Picture()
    {
        var across = Across();
        var (low, high) = Window();
        var values = new Axis(Quantity, Quantity, low, high, IsLog)
        {
            From = 0.42,
            HasGrid = false,
            Label = IsLog ? null : v => v < 0 ? "-" + PlotText.Number(-v) : PlotText.Number(v),
        };
        var title = IsLog ? Say("Moving range, %") : Say("Moving range");
        var greatest = Chart.MovingRanges.OfType<double>().Append(Chart.MovingRangeUpper).Max(Range);
        var ranges = new Axis(title, title, 0, 1.1 * greatest) { To = 0.35, HasGrid = false };
        return new(Title, Subtitle(), [new(across, values, [.. Levels(low, high), .. Values()]), new(across, ranges, [.. Ranges()])]);
    }

    private string Subtitle()
    {
        var limits = Chart.LeftOut.IsEmpty
            ? Say($"limits from {Chart.InBaseline} batches")
            : Say($"limits from {Chart.InBaseline} batches, without {string.Join(", ", Chart.LeftOut)}");
        var scale = IsLog ? Say("log scale") : Say("linear scale");
        var capability = Chart.Cpk is { Index: var index, Low: var low, High: var high }
            ? " · " + Say($"Cpk {index:0.00} ({low:0.00} to {high:0.00})")
            : "";
        return PlainText.Clean($"{limits} · {scale}{capability}");
    }

    private Axis Across()
    {
        var count = Chart.Points.Length;
        var shared = PlainText.Clean(Shared);
        var title = Shared.Length > 0 ? Say($"Batch: {shared}…") : Say("Batch");
        var brief = Shared.Length > 0 ? Say($"batch: {shared.ToLowerInvariant()}…") : Say("batch");
        return new(title, brief, 0.5, count + 0.5) { Names = Names, HasGrid = false };
    }

    /// <summary>The least and the greatest level that the upper panel shows.</summary>
    private (double Low, double High) Window()
    {
        double[] all = [.. Chart.Points.Select(p => p.Value), Chart.Lower, Chart.Upper, .. Wanted];
        var (low, high) = (all.Min(), all.Max());
        if (IsLog)
        {
            var factor = Math.Exp(0.1 * Math.Log(high / low));
            return (low / factor, high * factor);
        }

        var pad = 0.1 * (high - low);
        return (low - pad, high + pad);
    }

    /// <summary>A moving range as it is shown.</summary>
    private double Range(double range) => IsLog ? 100 * (Math.Exp(range) - 1) : range;

    private string Named(int place) => Names[place];

    /// <summary>What all names begin with, up to the last space or hyphen; it stands at the axis once.</summary>
    private static string Beginning(IReadOnlyList<string> names)
    {
        var least = names.Min(n => n.Length);
        var same = Enumerable.Range(0, least).TakeWhile(i => names.All(n => n[i] == names[0][i])).Count();
        var end = names.Count > 1 ? names[0].AsSpan(0, same).LastIndexOfAny(" -_/") + 1 : 0;
        return names.All(n => n.Length > end) ? names[0][..end] : "";
    }

    private IEnumerable<Element> Levels(double low, double high)
    {
        double[] zones = [-2, -1, 1, 2];
        var border = Chart.BaselineCount + 0.5;
        Element[] boundary =
        [
            new Element.Line(Meaning.Boundary, null, [new(border, low), new(border, high)]),
            new Element.Words(Meaning.Boundary, new(border, low), Say("baseline ends"), -1),
        ];
        return
        [
            .. zones.Select(z => new Element.Level(Meaning.Zone, Chart.Level(z))),
            new Element.Level(Meaning.Mean, Chart.Mean) { Key = new(Say("mean"), Say("mean")) },
            new Element.Level(Meaning.ControlLimit, Chart.Upper) { Key = new(Say("limits"), Say("limit")) },
            new Element.Level(Meaning.ControlLimit, Chart.Lower),
            .. Wanted.Select((w, i) => new Element.Level(Meaning.Wanted, w) { Key = i == 0 ? new(Say("wanted"), Say("wanted")) : null }),
            .. Chart.BaselineCount < Chart.Points.Length ? boundary : [],
        ];
    }

    private IEnumerable<Element> Values()
    {
        ImmutableArray<Spot> points = [.. Chart.Points.Select((p, i) => new Spot(i + 1, p.Value))];
        int[] signals = [.. Chart.Signals.Select(s => s.Place).Distinct()];
        return
        [
            new Element.Line(Meaning.Link, null, points),
            new Element.Marks(Meaning.Reading, null, points) { Key = new(Say("batch"), Say("batch")) },
            new Element.Marks(Meaning.Signal, null, [.. signals.Select(i => points[i])])
            {
                Key = new(signals.Length > 0 ? Say("signal") : null, Say("signal")),
            },
            .. signals.Select(i => new Element.Words(Meaning.Signal, points[i], Named(i), Chart.Away[i] > 0 ? 0 : 1)),
        ];
    }

    private IEnumerable<Element> Ranges()
    {
        var points = Chart.MovingRanges.Select((r, i) => (Range: r, Place: i)).Where(r => r.Range is not null)
            .Select(r => (Spot: new Spot(r.Place + 1, Range(r.Range!.Value)), r.Place)).ToList();
        return
        [
            new Element.Level(Meaning.Mean, Range(Chart.MovingRangeMean)),
            new Element.Level(Meaning.ControlLimit, Range(Chart.MovingRangeUpper)),
            new Element.Line(Meaning.Link, null, [.. points.Select(p => p.Spot)]),
            new Element.Marks(Meaning.Reading, null, [.. points.Select(p => p.Spot)]),
            new Element.Marks(Meaning.Signal, null, [.. points.Where(p => Chart.RangeSignals.Contains(p.Place)).Select(p => p.Spot)]),
        ];
    }
}
