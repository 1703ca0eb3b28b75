namespace Viscolog.Core.Curves;

/// <summary>A parameter of a fitted shape.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Unit">"ln" for a rise in ln(mPa·s), "%" for a dose in g per 100 g of base, "s" for seconds, "1" for a pure number, "mPa·s" for a viscosity, "mm" for a length.</param>
/// <param name="Value">The value in that unit; above 0 except for what may have either sign, by its name.</param>
/// <param name="StandardError">Its standard error in that unit, by the delta method on the logarithm; null where nothing tells it.</param>
/// <param name="PriorDecides">Whether the readings leave it nearly as unsure as the prior did.</param>
public sealed record FittedParameter(string Name, string Unit, double Value, double? StandardError, bool PriorDecides);
