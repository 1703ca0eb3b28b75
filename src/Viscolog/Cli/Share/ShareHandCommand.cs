using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;

namespace Viscolog.Cli.Share;

/// <summary>Hands a run to another bench.</summary>
internal sealed class ShareHandCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- share hand 3 --to south";

    private readonly Argument<string> _run = new("RUN") { Description = "The number of a logged run, or its UUID." };
    private readonly Option<string?> _to = TextOption.Create("--to", "BENCH", "The bench that goes on with it.");

    public ShareHandCommand()
        : base("hand", "Hand a run to another bench: from then on it alone adds to the run ('share take' there).", Example)
    {
        _to.Required = true;
        Take(_run, _to);
    }

    protected override ExitCode Run(Invocation call) => SharedLog.With(call, _ => call.WithLog(LogUse.Write, log =>
    {
        var named = call.Value(_to)!;
        if (RunSource.Find(log, call.Value(_run)) is not { } run)
        {
            return call.Refuse(RunSource.Unknown(call.Value(_run)));
        }

        if (run.HandedTo is not null)
        {
            return call.Refuse(WriteOutcome.Handed(run.Number));
        }

        if (log.Others.Read().Benches.FirstOrDefault(b => b.Name == named) is not { } bench)
        {
            return call.Refuse(
                $"no bench '{named}' is known here; 'viscolog share' fetches what there is, 'viscolog share status' lists them");
        }

        var outcome = log.Hand(run.Number, bench.Stream.Log);
        return outcome is WriteOutcome.Saved
            ? call.Answer(
                () => new LoggedAnswer(run.Number, run.File.Id, null),
                terminal => terminal.Line(
                    FormattableString.Invariant($"run {run.Number} is handed to '{named}'; 'viscolog share' sends that")))
            : call.LogFailed(outcome.Trouble!);
    }));
}
