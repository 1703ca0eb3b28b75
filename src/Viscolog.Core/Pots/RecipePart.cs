using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>One thickener of a recipe.</summary>
/// <param name="Thickener">The thickener, with the dilution that it is poured in.</param>
/// <param name="Dose">Thickener as supplied, over base.</param>
public sealed record RecipePart(Thickener Thickener, Dose Dose);
