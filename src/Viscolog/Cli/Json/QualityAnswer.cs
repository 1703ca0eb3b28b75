namespace Viscolog.Cli.Json;

/// <summary>Something beside the body that a specification asks for.</summary>
internal sealed record QualityAnswer(double? Value, double Low, double High, double? ConformityPct);
