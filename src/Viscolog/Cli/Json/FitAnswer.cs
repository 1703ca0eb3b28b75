namespace Viscolog.Cli.Json;

/// <summary>A fit as <c>viscolog.fit/1</c>.</summary>
internal sealed record FitAnswer
{
    public string Schema { get; } = "viscolog.fit/1";

    public string? Run { get; init; }

    public required IReadOnlyList<ShapeAnswer> Shapes { get; init; }

    public required IReadOnlyList<DosedBodyAnswer> At { get; init; }

    public DoseForTargetAnswer? DoseForTarget { get; init; }

    public TestDoseAnswer? TestNext { get; init; }

    public PairFitAnswer? Pair { get; init; }

    public required IReadOnlyList<string> Warnings { get; init; }
}
