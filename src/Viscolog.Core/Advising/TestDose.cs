using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>The dose to test next where the aim is the curve and not a target.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Expected">The settled body expected there.</param>
/// <param name="Gain">By how much the curve's mean variance over the usual range is expected to fall.</param>
/// <param name="Why">In words.</param>
public sealed record TestDose(Dose Dose, Estimate Expected, Percentage Gain, string Why);
