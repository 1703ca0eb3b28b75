using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Viscolog.Core.Pots;
using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tables;

namespace Viscolog.Cli.Calls;

/// <summary>Reads the runs that a command names: files, or runs of the log by number or UUID.</summary>
internal static class RunSource
{
    /// <summary>The argument that names a run.</summary>
    public static Argument<string> Argument() => new("RUN") { Description = "A run file, or the number of a logged run." };

    /// <summary>The option that names earlier runs.</summary>
    public static Option<string[]> History() => new("--history")
    {
        HelpName = "PATH",
        Description = "Earlier runs in place of the log's: a run file, or a folder of them; may be given more than once.",
        Arity = ArgumentArity.OneOrMore,
    };

    /// <summary>One run with its history; null after it was said why not, the exit code then says it too.</summary>
    /// <param name="named">What the command names.</param>
    /// <param name="history">Earlier runs to take instead of the log's; null for the log's.</param>
    /// <param name="call">The call.</param>
    /// <param name="code">How the call ends where there is no run.</param>
    /// <param name="target">What the call gives in place of the run's target; it may need the run's method to be understood.</param>
    public static NamedRun? Read(string named, string[]? history, Invocation call, out ExitCode code, TargetOptions? target = null)
    {
        var run = ReadWithHistory(named, history, call, out code);
        if (run is null || target?.Trouble(run.File.Run, call) is not { } trouble)
        {
            return run;
        }

        code = call.Wrong(trouble);
        return null;
    }

    /// <summary>A run of the log by number or UUID; null where it has none such.</summary>
    public static LoggedRun? Find(BenchLog log, string named)
        => Number(named) is { } number ? log.Run(number) : Guid.TryParseExact(named, "D", out var id) ? log.Run(id) : null;

    /// <summary>A run of another bench by UUID, to be read; null where none is known.</summary>
    public static SharedRun? Shared(BenchLog log, string named) => Guid.TryParseExact(named, "D", out var id)
        ? log.SharedRuns(there => there.Run(id) is { } run ? [run] : []).FirstOrDefault()
        : null;

    /// <summary>The same without its rows in memory.</summary>
    public static StreamedRun? Stream(BenchLog log, string named)
        => log.Streamed(Number(named), Guid.TryParseExact(named, "D", out var id) ? id : null);

    /// <summary>What to say where the log has no such run.</summary>
    public static string Unknown(string named) => $"the log has no run {named}; 'viscolog runs' lists what it has";

    /// <summary>
    /// Whether the name means a run of the log: a number or a UUID. A file of such a name is meant with its folder before it.
    /// </summary>
    public static bool IsLogged(string named) => Number(named) is not null || Guid.TryParseExact(named, "D", out _);

    /// <summary>One run file; null after its refusal was reported.</summary>
    public static RunFile? ReadFile(string path, Invocation call) => Taken(RunFileReader.Read(path), call);

    /// <summary>What was read; null after its refusal was reported.</summary>
    public static T? Taken<T>(TableOutcome<T> outcome, Invocation call)
        where T : class
    {
        switch (outcome)
        {
            case TableOutcome<T>.Read read:
                return read.File;
            case TableOutcome<T>.Refused refused:
                call.Terminal.Fail(Failure.Of(refused.Refusal));
                return null;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }

    /// <summary>
    /// The files that a name stands for: its own, or those in a folder, where pipes and devices are passed over with a line.
    /// </summary>
    public static IEnumerable<string> Inside(string path, Invocation call)
    {
        if (!Directory.Exists(path))
        {
            return [path];
        }

        try
        {
            // A spreadsheet keeps a file of such a name while it has a workbook open.
            var all = Directory.GetFiles(path, "*.csv").Concat(Directory.GetFiles(path, "*.xlsx"))
                .Where(p => !Path.GetFileName(p).StartsWith("~$", StringComparison.Ordinal)).Order(StringComparer.Ordinal)
                .ToLookup(p => FileKind.IsRegular(p) || !File.Exists(p));
            call.Warn(all[false].Select(p => $"{p}: a pipe, a device or a socket, skipped; name it directly to read it"));
            return all[true];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            call.Warn([$"{path}: skipped, the folder can't be read ({e.Message})"]);
            return [];
        }
    }

    private static NamedRun? ReadWithHistory(string named, string[]? history, Invocation call, out ExitCode code)
    {
        code = ExitCode.InputRefused;
        history = history is { Length: > 0 } ? history : null;
        var run = IsLogged(named)
            ? ReadLogged(named, withEarlier: history is null, call, ref code)
            : ReadFile(named, withEarlier: history is null, call, ref code);
        if (run is null || history is null)
        {
            return run;
        }

        return ReadHistory(history, named, call) is { } earlier ? run with { Earlier = earlier } : null;
    }

    private static int? Number(string named)
        => int.TryParse(named, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static NamedRun? ReadLogged(string named, bool withEarlier, Invocation call, ref ExitCode code)
    {
        using var log = call.OpenLog(LogUse.Read);
        if (log is null)
        {
            code = ExitCode.LogUnusable;
            return null;
        }

        if (Find(log, named) is not { } logged)
        {
            if (Shared(log, named) is { } shared)
            {
                return new(
                    $"run {shared.Number} of bench {shared.Bench.Name}", shared.File, withEarlier ? log.Earlier(shared.File.Run, null) : [],
                    shared.File.Warnings)
                { Bench = BenchKnowledge.Of(log) with { Oils = shared.Oils }, Rows = shared.Run.Rows };
            }

            call.Terminal.Fail(Unknown(named));
            return null;
        }

        return new(
            $"run {named}", logged.File, withEarlier ? log.Earlier(logged.File.Run, logged.Number) : [],
            logged.File.Warnings)
        { Bench = BenchKnowledge.Of(log), Rows = logged.Rows };
    }

    private static NamedRun? ReadFile(string path, bool withEarlier, Invocation call, ref ExitCode code)
    {
        if (ReadFile(path, call) is not { } file)
        {
            return null;
        }

        if (!withEarlier)
        {
            return new(path, file, [], file.Warnings);
        }

        if (FromLog(file, call) is not var (earlier, warnings, bench))
        {
            code = ExitCode.LogUnusable;
            return null;
        }

        return new(path, file, earlier, [.. file.Warnings, .. warnings]) { Bench = bench };
    }

    /// <summary>
    /// The log's earlier runs for a file. The file does not need the log: where there is none, or it is busy or damaged, a warning says so.
    /// Null after it was said that there may be one that can't be read: then nobody knows what is missing.
    /// </summary>
    private static (
        ImmutableArray<Run> Earlier, ImmutableArray<string> Warnings, BenchKnowledge Bench)? FromLog(RunFile file, Invocation call)
    {
        using var progress = call.Progress();
        if (!BenchLog.Open(call.Log, LogUse.Read, call.Clock, progress).Is(out var log, out var trouble))
        {
            if (call.Log.IsOutOfReach)
            {
                progress.Dispose();
                call.LogFailed($"{trouble}; allow reading it, name another log with --log, or earlier runs with --history");
                return null;
            }

            if (call.Log is { IsUsual: true, IsSurelyAbsent: true })
            {
                // Whoever has not begun a log is not in want of one.
                return ([], [], BenchKnowledge.None);
            }

            var why = call.Log.IsSurelyAbsent ? "there is no log yet ('viscolog import FILE' starts one)" : trouble;
            return ([], [$"going on without earlier runs: {why}"], BenchKnowledge.None);
        }

        using (log)
        {
            return (log.Earlier(file.Run, log.Find(file)), [.. log.Notes], BenchKnowledge.Of(log));
        }
    }

    /// <summary>Earlier runs from files and folders, the run at hand left out; null after a refusal was reported.</summary>
    private static ImmutableArray<Run>? ReadHistory(IEnumerable<string> paths, string runPath, Invocation call)
    {
        var runs = ImmutableArray.CreateBuilder<Run>();
        foreach (var path in paths)
        {
            if (!Directory.Exists(path))
            {
                if (ReadFile(path, call) is not { } file)
                {
                    return null;
                }

                runs.Add(file.Run);
                continue;
            }

            foreach (var inside in Inside(path, call).Where(p => !IsSame(p, runPath)))
            {
                if (RunFileReader.Read(inside) is TableOutcome<RunFile>.Read read)
                {
                    runs.Add(read.File.Run);
                }
                else
                {
                    call.Warn([$"{inside}: not a run file that can be read, skipped"]);
                }
            }
        }

        return runs.ToImmutable();
    }

    private static bool IsSame(string left, string right)
        => string.Equals(Path.GetFullPath(left), Path.GetFullPath(right), StringComparison.Ordinal);
}

/// <summary>A run that a command names.</summary>
/// <param name="Name">How messages name it.</param>
/// <param name="File">The run.</param>
/// <param name="Earlier">Earlier runs that tell something about it, the earliest first.</param>
/// <param name="Warnings">What the reader ought to know.</param>
internal sealed record NamedRun(string Name, RunFile File, ImmutableArray<Run> Earlier, ImmutableArray<string> Warnings)
{
    /// <summary>What the bench's log knows besides runs.</summary>
    public BenchKnowledge Bench { get; init; } = BenchKnowledge.None;

    /// <summary>The numbers of the file's rows in the log; empty for a file.</summary>
    public ImmutableArray<int> Rows { get; init; } = [];
}
