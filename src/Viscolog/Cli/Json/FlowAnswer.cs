namespace Viscolog.Cli.Json;

/// <summary>A flow curve as <c>viscolog.flow/1</c>.</summary>
internal sealed record FlowAnswer
{
    public string Schema { get; } = "viscolog.flow/1";

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
