using System.Collections.Immutable;
using Viscolog.Core.Checking;

namespace Viscolog.Cli;

/// <summary>Values of batches that a command names.</summary>
/// <param name="Name">What they are of; null where nobody says.</param>
/// <param name="Quantity">What was read.</param>
/// <param name="Unit">The values' unit; empty where none is known.</param>
/// <param name="Points">The values.</param>
/// <param name="UsualScale">The scale where none is asked for.</param>
internal sealed record TrendSource(string? Name, string Quantity, string Unit, ImmutableArray<ChartPoint> Points, ChartScale UsualScale)
{
    public double? Low { get; init; }

    public double? High { get; init; }

    public ImmutableArray<string> Warnings { get; init; } = [];
}
