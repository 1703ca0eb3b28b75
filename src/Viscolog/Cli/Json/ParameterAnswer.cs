namespace Viscolog.Cli.Json;

/// <summary>One fitted parameter.</summary>
internal sealed record ParameterAnswer(double Value, double? Se, string Unit, bool PriorDecides);
