namespace Viscolog.Cli.Json;

/// <summary>How the methods read certified oils, as <c>viscolog.drift/1</c>.</summary>
internal sealed record DriftsAnswer(IReadOnlyList<DriftAnswer> Methods, IReadOnlyList<OilAnswer> Readings)
{
    public string Schema { get; } = "viscolog.drift/1";
}
