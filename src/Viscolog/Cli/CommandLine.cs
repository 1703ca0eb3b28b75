using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Reflection;
using System.Text.Json;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Commands;
using Viscolog.Cli.Entries;
using Viscolog.Cli.Guide;
using Viscolog.Cli.Json;
using Viscolog.Cli.Practice;
using Viscolog.Cli.Share;
using Viscolog.Tables;
using Viscolog.Text;

namespace Viscolog.Cli;

/// <summary>The commands, wired together.</summary>
internal static class CommandLine
{
    /// <summary>The commands by name, in the order of the help.</summary>
    private static readonly (string Name, Func<CalledCommand> Make)[] Commands =
    [
        ("advise", static () => new AdviseCommand()),
        ("fit", static () => new FitCommand()),
        ("plot", static () => new PlotCommand()),
        ("check", static () => new CheckCommand()),
        ("trend", static () => new TrendCommand()),
        ("drift", static () => new DriftCommand()),
        ("batch", static () => new BatchCommand()),
        ("report", static () => new ReportCommand()),
        ("label", static () => new LabelCommand()),
        ("convert", static () => new ConvertCommand()),
        ("flow", static () => new FlowCommand()),
        ("import", static () => new ImportCommand()),
        ("runs", static () => new RunsCommand()),
        ("show", static () => new ShowCommand()),
        ("export", static () => new ExportCommand()),
        ("template", static () => new TemplateCommand()),
        ("bench", static () => new BenchCommand()),
        ("practice", static () => new PracticeCommand()),
        ("backup", static () => new BackupCommand()),
        ("restore", static () => new RestoreCommand()),
        ("verify", static () => new VerifyCommand()),
        ("new", static () => new NewCommand()),
        ("add", static () => new AddCommand()),
        ("void", static () => new VoidCommand()),
        ("listen", static () => new ListenCommand()),
        ("share", static () => new ShareCommand()),
        ("methods", static () => new MethodsCommand()),
        ("chemistries", static () => new ChemistriesCommand()),
        ("shapes", static () => new ShapesCommand()),
        ("config", static () => new ConfigCommand()),
        ("completions", static () => new CompletionsCommand()),
        ("help", static () => new HelpCommand()),
    ];

    /// <summary>Runs one call and says how it ended.</summary>
    public static int Run(string[] args, CallOutput terminal, Surroundings surroundings)
    {
        try
        {
            terminal.BeginWork(surroundings.Clock);
            return Ended(Invoke(args, terminal, surroundings), args, terminal);
        }
        catch (OutputLost e)
        {
            return Lost(e, terminal);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            terminal.Fail($"an internal error; nothing was changed: {e.GetType().Name}: {e.Message} - please report it with the command "
                + $"and the run file (see README.md)");
            return TryEnded((int)ExitCode.Fault, args, terminal);
        }
        finally
        {
            terminal.EndWork();
        }
    }

    /// <summary>The version, with the commit behind it where it is a release.</summary>
    private static string Version
        => typeof(CommandLine).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion;

    /// <summary>Takes a call's words apart and does nothing yet.</summary>
    public static ParseResult Parse(string[] args, CallOutput terminal, Surroundings surroundings)
        // A name that begins with @ is a name: no file is read in its place.
        => Create(args, terminal, surroundings).Parse(args, new() { ResponseFileTokenReplacer = null });

    private static int Invoke(string[] args, CallOutput terminal, Surroundings surroundings)
    {
        if (args is ["--version"])
        {
            // The answer needs none of the commands, and making all of them takes longer than all else.
            terminal.Line(Version);
            return (int)ExitCode.Done;
        }

        var parsed = Parse(args, terminal, surroundings);
        // A directive, such as the one that completions ask with, has a line of its own to look at.
        var wrong = args is [['[', ..], ..] ? null : WrongWord.Find(args, parsed);
        if (wrong is null && args.Contains(InputFile.StandardInput, StringComparer.Ordinal) && !surroundings.HasInput)
        {
            wrong = Failure.Of("standard input is closed; name a file in place of '-'");
        }

        if (wrong is null && parsed.Action is not ParseErrorAction)
        {
            WarnOfSettings(args, terminal, surroundings);
            return parsed.Invoke(new() { EnableDefaultExceptionHandler = false, Output = terminal.Writer, Error = terminal.ErrorWriter });
        }

        terminal.Fail(wrong ?? Misread(parsed));
        return (int)ExitCode.WrongCall;
    }

    /// <summary>Ends a call: where JSON was asked for and none was given, the reason stands in its place.</summary>
    private static int Ended(int code, string[] args, CallOutput terminal)
    {
        if (code != 0 && !terminal.HasAnswered && args.TakeWhile(a => a != "--").Contains("--json", StringComparer.Ordinal))
        {
            var failure = terminal.Failures is [var first, ..] ? first : Failure.Of("it was not done");
            var answer = new ErrorAnswer(failure.Error, failure.Hint, failure.File, failure.Line, failure.Column, code);
            terminal.Json(JsonSerializer.Serialize(answer, typeof(ErrorAnswer), AnswerContext.Relaxed));
        }

        terminal.Flush();
        return code;
    }

    // After a fault the output may be what is broken.
    private static int TryEnded(int code, string[] args, CallOutput terminal)
    {
        try
        {
            return Ended(code, args, terminal);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            return code;
        }
    }

    /// <summary>How a call ends whose output can't be written, on a full disk or into a closed stream.</summary>
    private static int Lost(OutputLost lost, CallOutput terminal)
    {
        if (lost.IsPipe)
        {
            // The reader of a pipe has gone; there is nobody left to tell.
            return (int)ExitCode.Done;
        }

        try
        {
            terminal.Error($"the output can't be written: {lost.Message}");
        }
        catch (OutputLost)
        {
            // Nor can this.
        }

        return (int)ExitCode.WrongCall;
    }

    /// <summary>Makes the commands; of a call that begins with one of them no more than that, since each takes its time.</summary>
    private static RootCommand Create(string[] args, CallOutput terminal, Surroundings surroundings)
    {
        var called = args is [var first, ..] && first is not HelpCommand.OwnName and not CompletionsCommand.OwnName
            ? Array.FindAll(Commands, c => c.Name == first) : [];
        var common = new CommonOptions(surroundings);
        var root = new RootCommand("Logs viscosity readings against thickener dose and says what to add next. Without a command it opens "
            + "the bench screen.");
        foreach (var (_, make) in called.Length > 0 ? called : Commands)
        {
            var command = make();
            command.Connect(common, terminal);
            root.Add(command);
        }

        foreach (var option in common.All)
        {
            root.Add(option);
        }

        root.SetAction(parsed =>
        {
            var call = new Invocation(parsed, common, terminal);
            Speak(call.Language);
            return (int)BenchCommand.Open(call, null);
        });
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new CommandHelp((HelpAction)help.Action!);
        return root;
    }

    private static void WarnOfSettings(string[] args, CallOutput terminal, Surroundings surroundings)
    {
        foreach (var warning in args.Contains("--quiet", StringComparer.Ordinal) ? [] : surroundings.Settings.Value.Warnings)
        {
            terminal.Error("warning: " + warning);
        }
    }

    private static Failure Misread(ParseResult parsed)
    {
        var error = parsed.Errors.FirstOrDefault(e => e.Message.StartsWith("Unrecognized", StringComparison.Ordinal)) ?? parsed.Errors[0];
        var hint = $"see viscolog {WrongWord.NameOf(parsed.CommandResult.Command)}--help";
        return new($"{error.Message} ({hint})", error.Message, hint);
    }
}

/// <summary>Ends a command's help with an example that works in a fresh checkout.</summary>
internal sealed class CommandHelp(HelpAction inner) : SynchronousCommandLineAction
{
    public override int Invoke(ParseResult parseResult)
    {
        var code = inner.Invoke(parseResult);
        var example = (parseResult.CommandResult.Command as CalledCommand)?.ExampleOfUse ?? AdviseCommand.Example;
        parseResult.InvocationConfiguration.Output.Write(IsInCheckout()
            ? $"Example, from the project's folder:\n  {example}\n"
            : "Example, with the project's sample runs:\n  "
                + example.Replace("dotnet run --project src/Viscolog --", "viscolog", StringComparison.Ordinal) + "\n");
        return code;
    }

    // Installed, the program is called by its name.
    private static bool IsInCheckout()
    {
        for (var folder = AppContext.BaseDirectory; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (File.Exists(Path.Combine(folder, "Viscolog.sln")))
            {
                return true;
            }
        }

        return false;
    }
}
