using System.Text.Json.Serialization;

namespace Viscolog.Cli.Json;

/// <summary>A flow curve as <c>viscolog.flow/1</c>.</summary>
internal sealed record FlowAnswer() : Answer("viscolog.flow/1")
{
    public string? Name { get; init; }
    public required string Weights { get; init; }
    public required int Points { get; init; }
    public required IReadOnlyList<FlowFitAnswer> Fits { get; init; }
    public required IReadOnlyList<FlowAtAnswer> At { get; init; }
    public FlowIndexAnswer? ThinningIndex { get; init; }
    public FlowLoopAnswer? Loop { get; init; }
    public string? Source { get; init; }
    public string? File { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }
}

/// <summary>One fitted law.</summary>
internal sealed record FlowFitAnswer(
    string Model, IReadOnlyDictionary<string, FlowParameterAnswer> Parameters, double? Rss, double? Aicc, double Weight, string? Trouble);

/// <summary>A viscosity at a rate.</summary>
internal sealed record FlowAtAnswer(
    string? Process,
    [property: JsonPropertyName("shear_rate_1_s")] double ShearRate,
    double MedianPas,
    double LowPas,
    double HighPas,
    bool OutsideData);

/// <summary>The shear-thinning index.</summary>
internal sealed record FlowIndexAnswer(double Value, [property: JsonPropertyName("from_1_s")] double From, bool OutsideData);

/// <summary>The loop between rates going up and coming down.</summary>
internal sealed record FlowLoopAnswer(double AreaPaPerS, double PartPct);

/// <summary>One parameter of a fitted law.</summary>
internal sealed record FlowParameterAnswer(double Value, double? Se, double? UpperLimit);
