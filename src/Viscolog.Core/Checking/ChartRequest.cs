using System.Collections.Immutable;

namespace Viscolog.Core.Checking;

/// <summary>What is asked of a control chart.</summary>
/// <param name="Points">The batches' values in the order in which they were made.</param>
/// <param name="Scale">The scale.</param>
public sealed record ChartRequest(ImmutableArray<ChartPoint> Points, ChartScale Scale)
{
    /// <summary>The limits come from so many of the first points; null for the usual number.</summary>
    public int? Baseline { get; init; }

    /// <summary>Batches of the baseline whose cause was found and which the limits leave out; they stay on the chart.</summary>
    public ImmutableArray<string> LeftOut { get; init; } = [];

    /// <summary>The least value wanted, in the chart's unit; null for none.</summary>
    public double? Low { get; init; }

    /// <summary>The greatest value wanted; null for none.</summary>
    public double? High { get; init; }
}
