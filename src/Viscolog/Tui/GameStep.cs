using System.Collections.Immutable;

namespace Viscolog.Tui;

/// <summary>A state of a practice game and what it asks the world to do.</summary>
internal sealed record GameStep(GameState State, ImmutableArray<GameEffect> Effects);
