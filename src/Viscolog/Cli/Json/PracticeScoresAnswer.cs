using System.Text.Json.Serialization;
using Viscolog.PracticeFiles;

namespace Viscolog.Cli.Json;

/// <summary>A class's games, as <c>viscolog.practice-scores/1</c>.</summary>
internal sealed record PracticeScoresAnswer(IReadOnlyList<PracticeResult> Games, IReadOnlyList<string> Warnings)
{
    [JsonPropertyOrder(-1)]
    public string Schema { get; } = "viscolog.practice-scores/1";
}
