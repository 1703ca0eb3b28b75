using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Text;

namespace Viscolog.Cli.Guide;

/// <summary>Lists the names of one kind that a file or an option may say.</summary>
internal abstract class NamesCommand(string kind, string description)
    : CalledCommand(kind, description, $"dotnet run --project src/Viscolog -- {kind}")
{
    protected abstract IReadOnlyList<NamedThing> Names { get; }

    protected override ExitCode Run(Invocation call) => call.Answer(() => new NamesAnswer(Name, Names), terminal =>
    {
        var table = new TextTable("name", "unit", "repeatability %", "what it is");
        foreach (var thing in Names)
        {
            table.Add(
                thing.Name,
                thing.Unit ?? "",
                thing.RepeatabilityPct?.ToString("0.0", CultureInfo.InvariantCulture) ?? "",
                thing.Words ?? "");
        }

        terminal.Table(table);
    });
}
