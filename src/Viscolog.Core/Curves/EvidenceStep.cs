using System.Collections.Immutable;

namespace Viscolog.Core.Curves;

/// <summary>A step as the curve sees it.</summary>
/// <param name="Place">The step's place in the run, from 0.</param>
/// <param name="Dose">Dose in g per 100 g of base.</param>
/// <param name="Readings">Its readings, in order; may be empty.</param>
/// <param name="LeftOut">Readings of a body that were left out, too far from the reference temperature.</param>
internal sealed record EvidenceStep(int Place, double Dose, ImmutableArray<BodyReading> Readings, int LeftOut);
