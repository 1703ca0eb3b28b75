using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Store;

namespace Viscolog.Cli.Commands;

/// <summary>Opens the screens: the bench on one run, or the list of runs.</summary>
internal sealed class BenchCommand : CalledCommand
{
    public const string Example = ImportCommand.Example + " && dotnet run --project src/Viscolog -- bench 1 --log my-log";

    private readonly Argument<string?> _run = new("RUN")
    {
        Description = "The number of a logged run; without it the list of runs opens.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    public BenchCommand()
        : base("bench", "Open the bench screen: log readings and get advice at the pot.", Example)
        => Take(_run);

    /// <summary>Opens the screens.</summary>
    /// <param name="call">The call.</param>
    /// <param name="name">Names a run; null for none.</param>
    public static ExitCode Open(Invocation call, string? name)
    {
        if (call.Surroundings.Obstacle() is { } obstacle)
        {
            call.Terminal.Fail(obstacle);
            return ExitCode.WrongCall;
        }

        return call.WithLog(LogUse.Write, log =>
        {
            // From here on the terminal is the screens'.
            call.Terminal.EndWork();
            var opened = name is null ? null : RunSource.Find(log, name);
            return name is not null && opened is null
                ? call.Refuse(RunSource.Unknown(name))
                : call.Ended(call.Surroundings.Screens(log, opened, call.Look()));
        });
    }

    protected override ExitCode Run(Invocation call) => Open(call, call.Optional(_run));
}
