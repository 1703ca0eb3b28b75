using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>The unthickened material in the pot: binder with or without colour concentrate, water, filler.</summary>
/// <param name="Name">Its name; null where the run states none.</param>
/// <param name="Density">Its density; null where the run states none.</param>
public sealed record PotBase(string? Name, Density? Density = null);
