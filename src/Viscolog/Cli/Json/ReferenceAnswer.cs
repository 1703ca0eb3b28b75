namespace Viscolog.Cli.Json;

/// <summary>A converted reading at the reference temperature.</summary>
internal sealed record ReferenceAnswer(double TempC, double? KinematicMm2S, double? DynamicMpas, double? YieldStressPa, double UncertaintyPct);
