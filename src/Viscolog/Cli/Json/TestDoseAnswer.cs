namespace Viscolog.Cli.Json;

/// <summary>The dose to test next where the aim is the curve.</summary>
internal sealed record TestDoseAnswer(double DosePct, BodyAnswer ExpectedMpas, double VarianceFallsPct, string Why);
