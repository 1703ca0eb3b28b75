namespace Viscolog.Cli.Json;

/// <summary>What a fit of two thickeners says beside the shape of the body thickener's curve.</summary>
internal sealed record PairFitAnswer(
    string BodyThickener,
    string StringThickener,
    IReadOnlyDictionary<string, ParameterAnswer> Body,
    IReadOnlyDictionary<string, ParameterAnswer> String,
    IReadOnlyList<DosedStringAnswer> StringAt);
