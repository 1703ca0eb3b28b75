namespace Viscolog.Cli.Json;

/// <summary>One fitted shape.</summary>
internal sealed record ShapeAnswer(
    string Shape,
    IReadOnlyDictionary<string, ParameterAnswer> Parameters,
    double? Aicc,
    double Weight,
    double? ScatterPct,
    double? LackOfFitP,
    string? Trouble);
