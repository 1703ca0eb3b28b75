using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>The dose beyond which more is wrong, and why.</summary>
/// <param name="Dose">The limit.</param>
/// <param name="Why">The reason, a phrase for a person.</param>
public sealed record DoseLimit(Dose Dose, string Why);
