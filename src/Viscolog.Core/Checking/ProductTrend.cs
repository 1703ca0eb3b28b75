using System.Collections.Immutable;
using Viscolog.Core.Charting;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;

namespace Viscolog.Core.Checking;

/// <summary>The values of a product's batches, each as a check of it would find it.</summary>
/// <param name="Points">In the order given, in mPa·s.</param>
/// <param name="LeftOut">Runs of the product that tell no value, with the reason.</param>
public sealed record ProductTrend(ImmutableArray<ChartPoint> Points, ImmutableArray<(string Name, ValueGap Gap)> LeftOut)
{
    /// <summary>Whether a run is a batch of a product: it says so, or it says nothing and its name is the product's, or the product's with
    /// more words after it.</summary>
    /// <param name="stated">The product that the run states; null where it states none.</param>
    /// <param name="name">The run's name; null where it has none.</param>
    /// <param name="product">The product.</param>
    public static bool IsOf(string? stated, string? name, string product)
        => stated is not null
            ? stated.Trim().Equals(product.Trim(), StringComparison.OrdinalIgnoreCase)
            : name is not null && $"{name} ".StartsWith($"{product.Trim()} ", StringComparison.OrdinalIgnoreCase);

    /// <summary>Works out the values.</summary>
    /// <param name="specification">The product; it asks for a body.</param>
    /// <param name="runs">The runs in order; those of other products are left aside.</param>
    /// <param name="today">The day of asking.</param>
    public static ProductTrend Of(Specification specification, IEnumerable<TrendRun> runs, DateOnly today)
    {
        var found = runs.Where(r => IsOf(r.Run.Product, r.Run.Name, specification.Name))
            .AsParallel().AsOrdered()
            .Select(r => (r.Name, Outcome: Enough(BatchChecks.ValueOf(new(r.Run, specification, today) { Oils = r.Oils }), specification)))
            .ToArray();
        return new(
            [.. found.Where(f => f.Outcome.Value is not null)
                .Select(f => new ChartPoint(f.Name, f.Outcome.Value!.Body.MilliPascalSeconds))],
            [.. found.Where(f => f.Outcome.Gap is not null).Select(f => (f.Name, f.Outcome.Gap!))]);
    }

    /// <summary>A value of fewer readings than a verdict needs is none: a run that was left half way is no batch yet.</summary>
    private static (BatchValue? Value, ValueGap? Gap) Enough((BatchValue? Value, ValueGap? Gap) found, Specification specification)
        => found.Value is { } value && value.Readings < specification.MinimumReadingsInForce
            ? (null, new ValueGap.TooFewReadings(value.Readings, specification.MinimumReadingsInForce)) : found;
}

/// <summary>A run that may be a batch of a product.</summary>
/// <param name="Name">Its name on a chart.</param>
/// <param name="Run">The run.</param>
/// <param name="Oils">Readings of certified oils at the bench that ran it.</param>
public sealed record TrendRun(string Name, Run Run, ImmutableArray<OilReading> Oils);
