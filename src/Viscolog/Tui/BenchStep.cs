using System.Collections.Immutable;

namespace Viscolog.Tui;

/// <summary>A state and what it asks the world to do.</summary>
internal sealed record BenchStep(BenchState State, ImmutableArray<BenchEffect> Effects);
