using System.Text.Json.Serialization;

namespace Viscolog.Cli.Json;

/// <summary>What a full check found, as <c>viscolog.verify/1</c>.</summary>
internal sealed record VerifyAnswer(long Lines, int Runs, long Entries, IReadOnlyList<string> Mended)
{
    [JsonPropertyOrder(-1)]
    public string Schema { get; } = "viscolog.verify/1";
}
