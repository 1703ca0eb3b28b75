using System.Text.Json.Serialization;

namespace Viscolog.Cli.Json;

/// <summary>A backup that was put back, as <c>viscolog.restore/1</c>.</summary>
internal sealed record RestoreAnswer(long Lines, string? Aside)
{
    [JsonPropertyOrder(-1)]
    public string Schema { get; } = "viscolog.restore/1";
}
