using System.CommandLine;
using Viscolog.Languages;
using Viscolog.Output;
using Viscolog.Store;
using Viscolog.Store.Journal;

namespace Viscolog.Cli.Calls;

/// <summary>One call of a command: what was asked and where to answer.</summary>
internal sealed class Invocation(ParseResult parsed, CommonOptions common, CallOutput terminal)
{
    private readonly HashSet<string> _warned = new(StringComparer.Ordinal);
    private readonly bool _quiet = parsed.GetValue(common.Quiet);

    public CallOutput Terminal { get; } = terminal.With(
        parsed.GetValue(common.Ascii) || common.Surroundings.Settings.Value.IsAscii,
        parsed.GetValue(common.NoColor) || !common.Surroundings.Settings.Value.HasColor);

    /// <summary>What the user's configuration file sets.</summary>
    public Settings Settings => common.Surroundings.Settings.Value;

    public bool Json { get; } = parsed.GetValue(common.Json);

    /// <summary>What people are answered in; JSON is the same for everybody.</summary>
    public Language Language => Json ? Language.English : Settings.Language ?? Settings.OfLocale(Surroundings.Variable);

    public Surroundings Surroundings => common.Surroundings;

    public TimeProvider Clock => common.Surroundings.Clock;

    /// <summary>The log that the call is about.</summary>
    public LogPlace Log { get; } = LogPlace.Of(
        parsed.GetValue(common.Log) ?? (
            string.IsNullOrEmpty(common.Surroundings.Variable(LogPlace.Variable)) ? common.Surroundings.Settings.Value.Log : null),
        common.Surroundings.Variable);

    /// <summary>Today, by the call's clock, where the bench stands.</summary>
    public DateOnly Today => DateOnly.FromDateTime(Clock.GetLocalNow().Date);

    public T? Value<T>(Option<T> option) => parsed.GetValue(option);

    public T Value<T>(Argument<T> argument) => parsed.GetRequiredValue(argument);

    public T? Optional<T>(Argument<T?> argument) => parsed.GetValue(argument);

    public void Warn(IEnumerable<string> warnings)
    {
        if (_quiet)
        {
            return;
        }

        foreach (var warning in warnings.Where(_warned.Add))
        {
            Terminal.Error("warning: " + warning);
        }
    }

    /// <summary>Says what was done, where the answer itself does not.</summary>
    public void Note(string text)
    {
        if (!_quiet)
        {
            Terminal.Error(text);
        }
    }

    /// <summary>Gives the answer as JSON alone, or in words after the warnings.</summary>
    public ExitCode Answer(Func<object> json, Action<CallOutput> words, params IEnumerable<string> warnings)
    {
        if (Json)
        {
            Print(json());
            return ExitCode.Done;
        }

        Warn(warnings);
        words(Terminal);
        return ExitCode.Done;
    }

    /// <summary>Says where a file was written, or why it was not.</summary>
    public ExitCode Written(Outcome<string> file, Func<string, object> json)
        => file.Match(path => Answer(() => json(path), t => t.Line($"written: {path}")), Refuse);

    /// <summary>Does something with the log and closes it.</summary>
    public ExitCode WithLog(LogUse use, Func<BenchLog, ExitCode> act, LogPatience? patience = null)
    {
        using var log = OpenLog(use, patience);
        return log is null ? ExitCode.LogUnusable : act(log);
    }

    public ExitCode Refuse(string reason)
    {
        Terminal.Fail(reason);
        return ExitCode.InputRefused;
    }

    /// <summary>A file that was refused.</summary>
    public ExitCode Refuse(Tables.Refusal refusal)
    {
        Terminal.Fail(Failure.Of(refusal));
        return ExitCode.InputRefused;
    }

    /// <summary>Options that don't go together.</summary>
    public ExitCode Wrong(string reason)
    {
        var words = parsed.CommandResult.Command.Parents.OfType<Command>().Where(c => c is not RootCommand).Select(c => c.Name)
            .Append(parsed.CommandResult.Command.Name);
        var help = $"see viscolog {string.Join(' ', words)} --help";
        Terminal.Fail(new Failure($"{reason} ({help})", reason, help));
        return ExitCode.WrongCall;
    }

    public ExitCode LogFailed(string reason)
    {
        Terminal.Fail(reason);
        return ExitCode.LogUnusable;
    }

    /// <summary>What a screen may use.</summary>
    public Look Look()
    {
        var term = Surroundings.Variable("TERM") ?? "";
        var trueColor = Surroundings.Variable("COLORTERM") is "truecolor" or "24bit";
        return new(
            Terminal.IsAscii,
            !parsed.GetValue(common.NoColor) && Settings.HasColor && string.IsNullOrEmpty(Surroundings.Variable("NO_COLOR")),
            !trueColor || term is "linux")
        {
            Ground = Settings.Theme,
            HasMouse = Settings.HasMouse,
        };
    }

    /// <summary>Says how screens ended where that was not as it should be.</summary>
    public ExitCode Ended(ScreenEnd end)
    {
        if (end.Fault is { } fault)
        {
            Terminal.Fail($"an internal error; everything saved so far is in the log: {fault.GetType().Name}: {fault.Message} - please "
                + $"report it (see README.md)");
            return ExitCode.Fault;
        }

        if (end.Code != 0)
        {
            Terminal.Fail("ended by a signal; everything that was saved is in the log");
        }

        return (ExitCode)end.Code;
    }

    /// <summary>Shows how far a long job has come.</summary>
    public ProgressLine Progress() => new(Terminal, Clock, _quiet);

    /// <summary>Opens the log; null after it was said why it can't be.</summary>
    public BenchLog? OpenLog(LogUse use, LogPatience? patience = null)
    {
        using var progress = Progress();
        if (!BenchLog.Open(Log, use, Clock, progress, patience).Is(out var log, out var trouble))
        {
            progress.Dispose();
            Terminal.Fail(trouble);
            return null;
        }

        progress.Dispose();
        Warn(log.Notes);
        return log;
    }

    /// <summary>Gives an answer that is too long to be held in memory, as JSON alone or in words.</summary>
    public ExitCode AnswerLong(Func<object> json, Action<CallOutput> words)
    {
        if (Json)
        {
            var answer = json();
            Terminal.Pieces(
                stream => System.Text.Json.JsonSerializer.Serialize(stream, answer, answer.GetType(), Cli.Json.AnswerContext.Relaxed));
        }
        else
        {
            words(Terminal);
        }

        return ExitCode.Done;
    }

    /// <summary>Gives one of several answers, as JSON on a line of its own, at once.</summary>
    public void PrintLine(object answer)
    {
        Terminal.Json(System.Text.Json.JsonSerializer.Serialize(answer, answer.GetType(), Cli.Json.AnswerContext.OneLine));
        Terminal.Flush();
    }

    public void Print(object answer)
        => Terminal.Json(System.Text.Json.JsonSerializer.Serialize(answer, answer.GetType(), Cli.Json.AnswerContext.Relaxed));
}
