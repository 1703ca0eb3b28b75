namespace Viscolog.Cli.Json;

/// <summary>One parameter of a fitted law.</summary>
internal sealed record FlowParameterAnswer(double Value, double? Se, double? UpperLimit);
