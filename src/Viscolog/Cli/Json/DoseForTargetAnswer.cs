namespace Viscolog.Cli.Json;

/// <summary>The dose that brings the target.</summary>
internal sealed record DoseForTargetAnswer(double MedianPct, double LowPct, double? HighPct);
