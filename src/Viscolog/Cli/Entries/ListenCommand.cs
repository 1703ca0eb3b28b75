using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Checking;
using Viscolog.Feeds;
using Viscolog.Store;

namespace Viscolog.Cli.Entries;

/// <summary>Listens to instruments and says what they say, a line of JSON each; logs their readings where that is asked.</summary>
internal sealed class ListenCommand : CalledCommand
{
    public const string Example = "printf '8420 mPas 23.1 C\\n' | dotnet run --project src/Viscolog -- listen - --reads "
        + "\"viscosity_mpas=1/2; temp_c=3/4\"";

    /// <summary>More than so many lines waiting to be said are dropped, the oldest first.</summary>
    private const int MostWaiting = 10_000;

    private readonly Argument<string[]> _instruments = new("INSTRUMENT")
    {
        Description = "An instrument of the log by its name, or NAME=SOURCE; with --reads a source: serial:PORT@BAUD,8N1, tcp:HOST:PORT, "
            + "file:PATH that grows, or - for standard input.",
        Arity = ArgumentArity.OneOrMore,
    };

    private readonly Option<string?> _reads = TextOption.Create(
        "--reads", "PATTERN", "How the lines are read, such as \"viscosity_mpas=2; temp_c=4\"; default: as the log knows the instrument.");

    private readonly Option<string?> _logTo = TextOption.Create(
        "--log-to", "RUN", "Log the readings to this run of the log: those called stable, else at intervals that grow as the pot stands.");

    private readonly Option<double?> _every = NumberOption.Create(
        "--every", "S", "With --log-to: the shortest interval in seconds; default 5.", new("s", 0.1, 86_400));

    private readonly Option<int?> _count = CountOption.Create("--count", "End after so many lines that were understood.", 1_000_000_000);

    public ListenCommand()
        : base("listen", "Listen to a viscometer, balance, thermometer or pH meter, and say or log what it reads.", Example)
        => Take(_instruments, _reads, _logTo, _every, _count);

    protected override ExitCode Run(Invocation call)
    {
        var needsLog = call.Value(_reads) is null || call.Value(_logTo) is not null;
        return needsLog
            ? call.WithLog(call.Value(_logTo) is null ? LogUse.Read : LogUse.Write, log => Run(call, log))
            : Listen(call, [], null);
    }

    private ExitCode Run(Invocation call, BenchLog log)
    {
        ListenedRun? run = null;
        if (call.Value(_logTo) is { } named)
        {
            if (RunSource.Find(log, named) is not { } logged)
            {
                return call.Refuse(RunSource.Unknown(named));
            }

            run = new(log, logged, new(TimeSpan.FromSeconds(call.Value(_every) ?? 5)));
        }

        return Listen(call, [.. log.Materials().Select(m => m.Material)], run);
    }

    private ExitCode Listen(Invocation call, ImmutableArray<Material> materials, ListenedRun? run)
    {
        var instruments = new List<Instrument>();
        foreach (var text in call.Value(_instruments))
        {
            if (Instrument.Read(text, call.Value(_reads), materials, out var error) is not { } instrument)
            {
                return call.Refuse(error!);
            }

            instruments.Add(instrument);
        }

        using var stop = new StopSignal();
        using var events = new BlockingCollection<FeedEvent>(MostWaiting);
        var dropped = 0L;
        List<Feed> feeds = [.. instruments.Select(i => new Feed(i.Name, i.Source, i.Pattern, call.Clock, Tell))];
        feeds.ForEach(f => f.Start());
        try
        {
            return Say(call, events, run, feeds.Count, () => Interlocked.Exchange(ref dropped, 0), stop.Token);
        }
        finally
        {
            feeds.ForEach(f => f.Dispose());
        }

        void Tell(FeedEvent told)
        {
            while (!events.TryAdd(told))
            {
                // A flood: the newest is what counts.
                if (events.TryTake(out _))
                {
                    Interlocked.Increment(ref dropped);
                }
            }
        }
    }

    private ExitCode Say(
        Invocation call, BlockingCollection<FeedEvent> events, ListenedRun? run, int open, Func<long> dropped, CancellationToken stop)
    {
        var left = call.Value(_count);
        try
        {
            while (open > 0 && left is not 0)
            {
                var told = events.Take(stop);
                if (dropped() is > 0 and var count)
                {
                    call.PrintLine(
                        new ListenAnswer
                        {
                            From = told.From,
                            State = "flooded",
                            Words = FormattableString.Invariant($"{count} lines dropped"),
                        });
                }

                if (told is FeedEvent.Told { State: FeedState.Ended })
                {
                    open--;
                }

                var answer = ListenAnswer.Of(told);
                if (told is FeedEvent.Understood understood)
                {
                    left--;
                    answer = answer with { Logged = run?.Take(understood) };
                }

                call.PrintLine(answer);
                if (run?.Trouble is { } trouble)
                {
                    return call.LogFailed(trouble);
                }
            }

            return ExitCode.Done;
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Stopped;
        }
    }
}
