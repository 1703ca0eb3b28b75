namespace Viscolog.Cli.Json;

/// <summary>A rule that a chart breaks, and on which side.</summary>
internal sealed record TrendSignalAnswer(string Batch, string Rule, string Side);
