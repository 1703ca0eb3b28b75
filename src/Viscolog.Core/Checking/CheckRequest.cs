using System.Collections.Immutable;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>What is asked of a batch.</summary>
/// <param name="Run">The batch.</param>
/// <param name="Specification">What it must meet.</param>
/// <param name="Today">The day of asking, for the age of the method's last check.</param>
public sealed record CheckRequest(Run Run, Specification Specification, DateOnly Today)
{
    /// <summary>Earlier runs, for the repeatability and for advice; those with another base or thickener are left aside.</summary>
    public ImmutableArray<Run> History { get; init; } = [];

    /// <summary>Readings of certified oils at this bench, by any method.</summary>
    public ImmutableArray<OilReading> Oils { get; init; } = [];

    /// <summary>The bench's own repeatability of the method; null where it keeps none. One that the run states goes before it.</summary>
    public Percentage? Repeatability { get; init; }
}
