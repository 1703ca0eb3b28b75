namespace Viscolog.Cli.Json;

/// <summary>One fitted law.</summary>
internal sealed record FlowFitAnswer(
    string Model, IReadOnlyDictionary<string, FlowParameterAnswer> Parameters, double? Rss, double? Aicc, double Weight, string? Trouble);
