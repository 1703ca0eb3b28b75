using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>A pair of doses.</summary>
/// <param name="Body">Dose of the thickener that makes the body.</param>
/// <param name="Second">Dose of the thickener that brings the string.</param>
public sealed record PairPlace(Dose Body, Dose Second);
