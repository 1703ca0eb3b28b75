namespace Viscolog.Cli.Json;

/// <summary>A fit as <c>viscolog.fit/1</c>.</summary>
internal sealed record FitAnswer() : Answer("viscolog.fit/1")
{
    public string? Run { get; init; }
    public required IReadOnlyList<ShapeAnswer> Shapes { get; init; }
    public required IReadOnlyList<DosedBodyAnswer> At { get; init; }
    public DoseForTargetAnswer? DoseForTarget { get; init; }
    public TestDoseAnswer? TestNext { get; init; }
    public PairFitAnswer? Pair { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }
}

/// <summary>One fitted shape.</summary>
internal sealed record ShapeAnswer(
    string Shape,
    IReadOnlyDictionary<string, ParameterAnswer> Parameters,
    double? Aicc,
    double Weight,
    double? ScatterPct,
    double? LackOfFitP,
    string? Trouble);

/// <summary>One fitted parameter.</summary>
internal sealed record ParameterAnswer(double Value, double? Se, string Unit, bool PriorDecides);

/// <summary>The body expected at a dose.</summary>
internal sealed record DosedBodyAnswer(double DosePct, double MedianMpas, double LowMpas, double HighMpas);

/// <summary>The string expected at a dose.</summary>
internal sealed record DosedStringAnswer(double DosePct, double MedianMm, double LowMm, double HighMm);

/// <summary>The dose that brings the target.</summary>
internal sealed record DoseForTargetAnswer(double MedianPct, double LowPct, double? HighPct);

/// <summary>The dose to test next where the aim is the curve.</summary>
internal sealed record TestDoseAnswer(double DosePct, BodyAnswer ExpectedMpas, double VarianceFallsPct, string Why);

/// <summary>What a fit of two thickeners says beside the shape of the body thickener's curve.</summary>
internal sealed record PairFitAnswer(
    string BodyThickener,
    string StringThickener,
    IReadOnlyDictionary<string, ParameterAnswer> Body,
    IReadOnlyDictionary<string, ParameterAnswer> String,
    IReadOnlyList<DosedStringAnswer> StringAt);
