using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Body and string at one dose of a slice.</summary>
/// <param name="Dose">The dose.</param>
/// <param name="Body">The settled body.</param>
/// <param name="Length">The string.</param>
public sealed record PairSample(Dose Dose, Estimate Body, LengthEstimate Length);
