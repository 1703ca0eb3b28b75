using System.Text.Json.Serialization;
using Viscolog.Core.Pots;
using Viscolog.RunFiles;
using Viscolog.Store;

namespace Viscolog.Cli.Json;

/// <summary>A logged run, as <c>viscolog.run/1</c>.</summary>
internal sealed record RunAnswer
{
    public string Schema { get; } = "viscolog.run/1";

    public required string Id { get; init; }

    public required int Number { get; init; }

    public string? Name { get; init; }

    /// <summary>The header, lines as in a run file.</summary>
    public required IReadOnlyList<string> Header { get; init; }

    public required IReadOnlyList<Entry> Entries { get; init; }

    public static RunAnswer Of(LoggedRun logged)
    {
        var run = logged.File.Run;
        var pot = Pot.With(run.BaseMass);
        var entries = new List<Entry>();
        foreach (var (row, number) in logged.File.Contents().Zip(logged.Rows))
        {
            pot = row.Entries().Aggregate(pot, run.After);
            entries.Add(new(number, run.Thickeners.ToDictionary(t => t.Name, t => Rounded.Four(pot.DoseOf(t.Name).Percent), StringComparer.Ordinal), row));
        }

        return new() { Id = logged.File.Id.ToString()!, Number = logged.Number, Name = run.Name, Header = [.. HeaderText.Of(logged.File)], Entries = entries };
    }

    /// <summary>One row.</summary>
    /// <param name="Row">Its number in the run.</param>
    /// <param name="DosesPct">The dose of each thickener in the pot after it.</param>
    /// <param name="Is">What it says; names as the columns of a run file.</param>
    internal sealed record Entry(int Row, IReadOnlyDictionary<string, double> DosesPct, [property: JsonPropertyName("is")] FileRow Is);
}
