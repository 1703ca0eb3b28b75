using System.Globalization;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;
using Viscolog.Wording;

namespace Viscolog.Cli.Share;

/// <summary>Lists the runs of other benches.</summary>
internal sealed class ShareRunsCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- share runs";

    public ShareRunsCommand()
        : base("runs", "List the runs of other benches, and those that one bench has handed to another.", Example)
    {
    }

    protected override ExitCode Run(Invocation call) => SharedLog.With(call, _ => call.WithLog(LogUse.Read, log =>
    {
        var runs = log.SharedRuns();
        return call.Answer(
            () => new SharedRunsAnswer(
                [.. runs.Select(r => new SharedRunsAnswer.SharedRun(
                    r.File.Id!.Value, r.Bench.Name, RunTitle.Of(r.File.Run), r.File.Rows.Length, Handed(r, log)))]),
            terminal => terminal.Table(
                ["bench", "run", "entries", "handed", "identity"],
                () => runs.Select(r => new[]
                {
                    r.Bench.Name, RunTitle.Of(r.File.Run), r.File.Rows.Length.ToString(CultureInfo.InvariantCulture), Handed(r, log) ?? "",
                    r.File.Id!.Value.ToString(),
                })));
    }));

    private static string? Handed(SharedRun run, BenchLog log)
        => run.HandedTo is not { } to ? null : to == log.Id ? "here" : "elsewhere";
}
