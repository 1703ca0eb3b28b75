using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>A viscosity read off the fitted laws at a rate.</summary>
/// <param name="At">The rate.</param>
/// <param name="Value">The viscosity; the interval holds it nine times in ten as far as laws and scatter tell.</param>
/// <param name="IsOutside">Whether the rate lies outside the data: then the value is a guess by the laws.</param>
public sealed record RateViscosity(NamedRate At, Estimate Value, bool IsOutside);
