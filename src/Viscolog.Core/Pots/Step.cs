using System.Collections.Immutable;

namespace Viscolog.Core.Pots;

/// <summary>A pot and the readings taken of it, up to the next change of what it holds.</summary>
/// <param name="Pot">The pot when they were taken; a sample taken between them changes neither dose nor share.</param>
/// <param name="Readings">The readings that count, in order, each with the place of its entry in the run.</param>
public sealed record Step(Pot Pot, ImmutableArray<PlacedReading> Readings);
