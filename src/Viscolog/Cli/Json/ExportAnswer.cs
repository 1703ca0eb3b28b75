using System.Text.Json.Serialization;

namespace Viscolog.Cli.Json;

/// <summary>Files that an export wrote, as <c>viscolog.export/1</c>.</summary>
internal sealed record ExportAnswer(IReadOnlyList<string> Written)
{
    [JsonPropertyOrder(-1)]
    public string Schema { get; } = "viscolog.export/1";
}
