namespace Viscolog.Core.Curves;

/// <summary>A positive parameter of a shape with its prior: normal on the natural logarithm.</summary>
/// <param name="Name">What it is called in reports.</param>
/// <param name="Unit">Its unit: "ln" for a rise in ln(mPa·s), "R" for a dose over the top of the usual range, "1" for a pure number.</param>
/// <param name="Median">The prior's median; above 0. From memory unless docs/science.md names a source.</param>
/// <param name="LogSd">The prior's standard deviation on the logarithm; above 0.</param>
public sealed record ShapeParameter(string Name, string Unit, double Median, double LogSd);
