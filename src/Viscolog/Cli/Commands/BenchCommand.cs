using System.Collections.Immutable;
using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Feeds;
using Viscolog.Sharing;
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

    private readonly Option<string[]> _listen = new("--listen")
    {
        HelpName = "INSTRUMENT",
        Description =
            "Listen to an instrument of the log, by its name or as NAME=SOURCE; may be given more than once. Its readings fill the "
            + "field and wait for Enter, a balance shows the pour, what else it reads goes with the reading.",
        Arity = ArgumentArity.OneOrMore,
    };

    private readonly Option<bool> _take = FlagOption.Create(
        "--take", "With --listen: log readings by themselves when they are stable, else at intervals that grow as the pot stands.");

    public BenchCommand()
        : base("bench", "Open the bench screen: log readings and get advice at the pot.", Example)
        => Take(_run, _listen, _take);

    /// <summary>Opens the screens.</summary>
    /// <param name="call">The call.</param>
    /// <param name="name">Names a run; null for none.</param>
    /// <param name="listen">Instruments to listen to.</param>
    /// <param name="takes">Whether readings that have come to rest are logged by themselves.</param>
    public static ExitCode Open(Invocation call, string? name, string[]? listen = null, bool takes = false)
    {
        if (call.Surroundings.Obstacle() is { } obstacle)
        {
            call.Terminal.Fail(obstacle);
            return ExitCode.WrongCall;
        }

        return call.WithLog(LogUse.Write, log =>
        {
            var instruments = ImmutableArray.CreateBuilder<Instrument>();
            foreach (var text in listen ?? [])
            {
                if (Instrument.Read(text, null, log.Materials().Select(m => m.Material), out var error) is not { } instrument)
                {
                    return call.Refuse(error!);
                }

                instruments.Add(instrument);
            }

            // From here on the terminal is the screens'.
            call.Terminal.EndWork();
            using var post = SharePost.Of(log, call.Clock);
            var look = call.Look() with
            {
                Instruments = instruments.ToImmutable(),
                TakesReadings = takes || call.Settings.TakesReadings,
                Post = post,
            };
            var opened = name is null ? null : RunSource.Find(log, name);
            return name is not null && opened is null
                ? call.Refuse(RunSource.Unknown(name))
                : call.Ended(call.Surroundings.Screens(log, opened, look));
        });
    }

    protected override ExitCode Run(Invocation call) => Open(call, call.Optional(_run), call.Value(_listen), call.Value(_take));
}
