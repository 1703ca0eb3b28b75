using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What a batch is made after.</summary>
/// <param name="Run">The run, with the repeatability in force.</param>
/// <param name="Band">The band aimed at; null where there is none.</param>
/// <param name="Source">Where the final doses come from.</param>
/// <param name="Warnings">What a reader of the run's curve must know.</param>
internal sealed record BatchFrame(Run Run, ViscosityBand? Band, string Source, ImmutableArray<string> Warnings)
{
    /// <summary>The body of the run's base before any thickener; null where nothing tells.</summary>
    public Viscosity? BaseBody { get; init; }
}
