using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>One string length as a plot shows it.</summary>
/// <param name="Step">The place of its step in the run, from 0.</param>
/// <param name="Dose">The dose it was read at.</param>
/// <param name="Length">How far the string was drawn.</param>
public sealed record PicturedString(int Step, Dose Dose, Length Length);
