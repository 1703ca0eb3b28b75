using System.Collections.Immutable;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>What a thickener, or a pair of them, needs to reach a target in a base; intervals hold 9 times in 10.</summary>
/// <param name="Thickeners">One or two.</param>
/// <param name="Runs">Runs that tell of it.</param>
/// <param name="ChanceReached">The chance that the target is reached within the usual range.</param>
public sealed record Contender(ImmutableArray<Thickener> Thickeners, int Runs, Percentage ChanceReached)
{
    /// <summary>Dose of all thickeners together in g per 100 g of base; null where the target is not expected to be reached.</summary>
    public Spread? Dose { get; init; }

    /// <summary>Cost for 1 kg of base in the user's currency; null where a price is not stated.</summary>
    public Spread? Cost { get; init; }

    /// <summary>Water brought in, in g per 100 g of base: what is not active matter, and dilution water; null where the active matter is not stated.</summary>
    public Spread? Water { get; init; }

    /// <summary>What the thickeners are called together.</summary>
    public string Name => string.Join(" + ", Thickeners.Select(t => t.Name));
}
