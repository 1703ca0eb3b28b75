using System.CommandLine.Parsing;
using Viscolog.Cli;
using Viscolog.Store;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Tests.Support;

/// <summary>What one call of the program printed, and how it ended.</summary>
/// <param name="Code">The exit code.</param>
/// <param name="Output">Standard output.</param>
/// <param name="Error">Standard error.</param>
internal sealed record Called(int Code, string Output, string Error)
{
    private static readonly Lazy<string> EmptyLog = new(NewLog);

    /// <summary>Calls the program in this process as on a pipe, with a log that holds no runs.</summary>
    public static Called With(params string[] args) => In(EmptyLog.Value, args);

    /// <summary>The same at a certain time.</summary>
    public static Called At(DateTimeOffset now, params string[] args) => Run(EmptyLog.Value, new StoppedClock(now), args);

    /// <summary>Calls the program with a log's folder as the usual one.</summary>
    public static Called In(string log, params string[] args) => Run(log, TimeProvider.System, args);

    /// <summary>The same at a certain time.</summary>
    public static Called In(string log, TimeProvider clock, params string[] args) => Run(log, clock, args);

    /// <summary>Calls the program where nobody named a log, with a folder for the user's data.</summary>
    public static Called Unnamed(string data, params string[] args)
    {
        // Nothing else in the tests looks there.
        Environment.SetEnvironmentVariable("XDG_DATA_HOME", data);
        return Run(null, TimeProvider.System, args);
    }

    /// <summary>What is wrong with a call's words, without carrying it out; of a call that is not whole, the unknown words.</summary>
    public static IReadOnlyList<string> Complaints(string arguments, bool isWhole)
    {
        using var nowhere = new TerminalWriter(TextWriter.Null);
        var parsed = CommandLine.Parse(
            [.. CommandLineParser.SplitCommandLine(arguments)], new(nowhere, nowhere, new(80)), new(_ => null, TimeProvider.System));
        return isWhole ? [.. parsed.Errors.Select(e => e.Message)] : parsed.UnmatchedTokens;
    }

    /// <summary>Sees that it ended well and printed nothing but ASCII.</summary>
    public void IsAscii()
    {
        Assert.Equal(0, Code);
        Assert.NotEmpty(Output);
        Assert.DoesNotContain(Output, c => c is not '\n' and (< ' ' or > '~'));
    }

    /// <summary>The same on a terminal.</summary>
    public static Called OnTerminal(string log, params string[] args) => Run(log, TimeProvider.System, args, isTerminal: true);

    /// <summary>The same, with the most characters that were given to the output at once.</summary>
    public static (Called Called, int Most) InPieces(string log, params string[] args)
    {
        using var output = new LargestPiece();
        return (Run(log, TimeProvider.System, args, output), output.Most);
    }

    private static Called Run(string? log, TimeProvider clock, string[] args, bool isTerminal = false)
    {
        using var output = new StringWriter();
        return Run(log, clock, args, output, isTerminal);
    }

    private static Called Run(string? log, TimeProvider clock, string[] args, StringWriter output, bool isTerminal = false)
    {
        using var error = new StringWriter();
        using var outputWriter = new TerminalWriter(output);
        using var errorWriter = new TerminalWriter(error);
        var code = CommandLine.Run(
            args,
            new(outputWriter, errorWriter, new(80) { Terminal = isTerminal }),
            new(name => name == LogPlace.Variable ? log : null, clock));
        return new(code, output.ToString(), error.ToString());
    }

    private static string NewLog()
    {
        var folder = Directory.CreateTempSubdirectory("viscolog-log-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        BenchLog.Open(new(folder), LogUse.Write, TimeProvider.System, null).Made!.Dispose();
        return folder;
    }

    /// <summary>Knows the longest text that it was given at once.</summary>
    private sealed class LargestPiece : StringWriter
    {
        public int Most { get; private set; }

        public override void Write(string? value)
        {
            Most = Math.Max(Most, value?.Length ?? 0);
            base.Write(value);
        }
    }
}
