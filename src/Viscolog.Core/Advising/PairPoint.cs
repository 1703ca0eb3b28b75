using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>One step of a run with two thickeners as a plot shows it.</summary>
/// <param name="Place">Its doses.</param>
/// <param name="Bodies">The readings of body, at the reference temperature.</param>
/// <param name="Lengths">The readings of string.</param>
public sealed record PairPoint(PairPlace Place, System.Collections.Immutable.ImmutableArray<Viscosity> Bodies, System.Collections.Immutable.ImmutableArray<Length> Lengths);
