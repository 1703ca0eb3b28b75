using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>What a batch is made of.</summary>
/// <param name="Base">Base.</param>
/// <param name="Water">Water on its own, without that of cut thickeners.</param>
/// <param name="Parts">The thickeners, in the order in which they go in.</param>
public sealed record RecipeAmounts(Mass Base, Mass Water, ImmutableArray<PartAmount> Parts)
{
    /// <summary>All of it.</summary>
    public Mass Total => Mass.FromGrams(Base.Grams + Water.Grams + Parts.Sum(p => p.Poured.Grams));
}
