using Viscolog.Core.Quantities;

namespace Viscolog.Core.Flow;

/// <summary>The shear-thinning index: viscosity at a rate over that at ten times the rate (the trade's way with two speeds).</summary>
/// <param name="Value">1 for a liquid that does not thin, more for one that does.</param>
/// <param name="From">The lower rate.</param>
/// <param name="IsOutside">Whether one of the rates lies outside the data.</param>
public sealed record ThinningIndex(double Value, ShearRate From, bool IsOutside);
