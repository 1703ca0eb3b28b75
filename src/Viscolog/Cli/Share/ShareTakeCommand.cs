using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Store;

namespace Viscolog.Cli.Share;

/// <summary>Goes on with a run that another bench has handed to this one.</summary>
internal sealed class ShareTakeCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- share take 0197f2c4-6d1e-7cc3-98a2-5b1f0e9d7a10";

    private readonly Argument<string> _run = new("ID") { Description = "The run's UUID, as 'share runs' lists it." };

    public ShareTakeCommand()
        : base("take", "Go on with a run that another bench has handed to this one.", Example)
        => Take(_run);

    protected override ExitCode Run(Invocation call) => SharedLog.With(call, _ => call.WithLog(LogUse.Write, log =>
    {
        if (!Guid.TryParse(call.Value(_run), out var id)
            || log.Handed().FirstOrDefault(r => r.File.Id == id) is not { } run)
        {
            return call.Refuse("no run of that UUID was handed to this bench, as far as is known here; "
                + "'viscolog share' fetches what there is, "
                + "'viscolog share runs' lists it");
        }

        var (outcome, plan) = log.Take(run.File);
        return outcome is WriteOutcome.Saved
            ? call.Answer(
                () => new LoggedAnswer(plan!.Run, id, null),
                terminal => terminal.Line(FormattableString.Invariant($"run {plan!.Run} goes on here")))
            : outcome is WriteOutcome.Contradicted ? call.Refuse(outcome.Trouble!) : call.LogFailed(outcome.Trouble!);
    }));
}
