using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Store;

namespace Viscolog.Cli.Commands;

/// <summary>Opens the screens: the bench on one run, or the list of runs.</summary>
internal sealed class BenchCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- bench 1 --log my-log";

    private readonly Argument<string?> run = new("RUN") { Description = "The number of a logged run; without it the list of runs opens.", Arity = ArgumentArity.ZeroOrOne };

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("bench", "Open the bench screen: log, see, and be advised at the pot.");
        command.Add(run);
        common.AddTo(command);
        command.SetAction(parsed => Run(new(parsed, common, terminal), run));
        return command;
    }

    /// <summary>Opens the screens.</summary>
    /// <param name="call">The call.</param>
    /// <param name="named">The argument that names a run; null where the call has none.</param>
    public static int Run(Invocation call, Argument<string?>? named)
    {
        if (call.Surroundings.Obstacle() is { } obstacle)
        {
            call.Terminal.Error(obstacle);
            return (int)ExitCode.WrongCall;
        }

        using var log = call.OpenLog(LogUse.Write);
        if (log is null)
        {
            return (int)ExitCode.LogUnusable;
        }

        LoggedRun? opened = null;
        if (named is not null && call.Optional(named) is { } name)
        {
            opened = RunSource.Find(log, name);
            if (opened is null)
            {
                return (int)call.Refuse(RunSource.Unknown(name));
            }
        }

        return call.Ended(call.Surroundings.Screens(log, opened, call.Look()));
    }
}
