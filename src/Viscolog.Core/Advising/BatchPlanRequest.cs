using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What is asked of a batch.</summary>
/// <param name="Run">The run that it is made after.</param>
/// <param name="Size">How large it is to be.</param>
public sealed record BatchPlanRequest(Run Run, BatchSize Size)
{
    /// <summary>The band aimed at; null for the run's own.</summary>
    public ViscosityBand? Band { get; init; }

    /// <summary>Earlier runs; those with another base or thickener are left aside.</summary>
    public ImmutableArray<Run> History { get; init; } = [];

    /// <summary>The greatest chance of going over that an addition may carry.</summary>
    public Percentage Risk { get; init; } = IncrementPolicy.DefaultRisk;

    /// <summary>Step of the scale that thickener is weighed on; null for the one that the batch needs.</summary>
    public Mass? ScaleStep { get; init; }
}
