using System.Text.Json.Serialization;

namespace Viscolog.Cli.Json;

/// <summary>A backup that was made, as <c>viscolog.backup/1</c>.</summary>
internal sealed record BackupAnswer(string Path, long Lines, int Deleted)
{
    [JsonPropertyOrder(-1)]
    public string Schema { get; } = "viscolog.backup/1";
}
