using System.Text.Json.Serialization;
using Viscolog.Store;

namespace Viscolog.Cli.Json;

/// <summary>The list of runs, as <c>viscolog.runs/1</c>.</summary>
internal sealed record RunsAnswer(IReadOnlyList<RunsAnswer.Run> Runs)
{
    [JsonPropertyOrder(-1)]
    public string Schema { get; } = "viscolog.runs/1";

    /// <summary>One run.</summary>
    internal sealed record Run(string Id, int Number, string? Name, string? Base, string? Lot, IReadOnlyList<string> Thickeners, int Entries, int Voided, int Readings, string Last)
    {
        public static Run Of(RunSummary run)
            => new(run.Id.ToString(), run.Number, run.Name, run.Base, run.Lot, run.Thickeners, run.Entries, run.Voided, run.Readings, RunFiles.FileTime.Show(run.Last));
    }
}
