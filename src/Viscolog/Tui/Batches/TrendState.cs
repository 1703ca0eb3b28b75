using System.Collections.Immutable;
using Viscolog.Core.Charting;
using Viscolog.Core.Checking;
using Viscolog.Plots;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tui.Batches;

/// <summary>The trend of a product's batches.</summary>
/// <param name="Products">Specifications that ask for a body, by name.</param>
internal sealed record TrendState(ImmutableArray<Specification> Products)
{
    public int Chosen { get; init; }

    public ChartScale Scale { get; init; } = ChartScale.Log;

    /// <summary>The batches; null while they are worked out.</summary>
    public ProductTrend? Trend { get; init; }

    /// <summary>Lines of the findings that are passed over.</summary>
    public Scrolling Passed { get; init; }

    public string Said { get; init; } = "";

    public Specification? Current => Products.IsEmpty ? null : Products[Math.Clamp(Chosen, 0, Products.Length - 1)];

    /// <summary>The state when the screen opens.</summary>
    /// <param name="materials">What the log keeps.</param>
    /// <param name="name">The product, or a run of it; null for the first.</param>
    public static TrendState Of(IEnumerable<Material> materials, string? name)
    {
        ImmutableArray<Specification> products = [.. materials.OfType<Material.OfSpecification>().Select(s => s.Specification)
            .Where(s => s.Body is not null).OrderBy(s => s.Name, StringComparer.Ordinal)];
        var meant = products.Select((p, i) => (p, i)).Where(p => name is not null && ProductTrend.IsOf(null, name, p.p.Name))
            .Select(p => p.i).FirstOrDefault();
        return new(products) { Chosen = meant };
    }

    /// <summary>The chart, or why there is none; null before the batches are there.</summary>
    public ChartOutcome? Charted() => Trend is null || Current is not { Body.Band: var band }
        ? null
        : ControlChart.Of(new(Trend.Points, Scale) { Low = band.Low.MilliPascalSeconds, High = band.High.MilliPascalSeconds });

    /// <summary>The chart as it is drawn; null where there is none.</summary>
    public TrendPicture? Picture()
        => Charted() is ChartOutcome.Charted { Chart: var chart } ? new(Current!.Name, Say("Viscosity, mPa·s"), chart) : null;
}
