using System.Collections.Immutable;
using Viscolog.Core.Checking;

namespace Viscolog.TrendFiles;

/// <summary>Values of batches as a file holds them.</summary>
/// <param name="Points">In the order read.</param>
/// <param name="Column">The column of the values.</param>
internal sealed record TrendFile(ImmutableArray<ChartPoint> Points, string Column)
{
    /// <summary>What the batches are of.</summary>
    public string? Name { get; init; }

    /// <summary>The values' unit; empty where none is known.</summary>
    public string Unit { get; init; } = "";

    /// <summary>The least value wanted.</summary>
    public double? Low { get; init; }

    /// <summary>The greatest value wanted.</summary>
    public double? High { get; init; }

    /// <summary>What the reader ought to know, a line each.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>The scale where none is asked for: logarithms, but a pH is one already, and 0 and less have none.</summary>
    public ChartScale UsualScale
        => Column.Equals(TrendColumns.Ph, StringComparison.OrdinalIgnoreCase) || Points.Any(p => p.Value <= 0) ? ChartScale.Linear : ChartScale.Log;
}
