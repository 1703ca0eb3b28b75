using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Commands;
using Viscolog.Cli.Practice;
using Viscolog.Text;

namespace Viscolog.Cli;

/// <summary>The commands, wired together.</summary>
internal static class CommandLine
{
    /// <summary>Runs one call and says how it ended.</summary>
    public static int Run(string[] args, CallOutput terminal, Surroundings surroundings)
    {
        try
        {
            var code = Invoke(args, terminal, surroundings);
            terminal.Flush();
            return code;
        }
        catch (OutputLost e)
        {
            return Lost(e, terminal);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            terminal.Error($"an internal error; nothing was changed: {e.GetType().Name}: {e.Message} - please report it with the command "
                + $"and the run file (see README.md)");
            return (int)ExitCode.Fault;
        }
    }

    /// <summary>Takes a call's words apart and does nothing yet.</summary>
    public static ParseResult Parse(string[] args, CallOutput terminal, Surroundings surroundings)
        // A name that begins with @ is a name: no file is read in its place.
        => Create(terminal, surroundings).Parse(args, new() { ResponseFileTokenReplacer = null });

    private static int Invoke(string[] args, CallOutput terminal, Surroundings surroundings)
    {
        var parsed = Parse(args, terminal, surroundings);
        if (parsed.Action is not ParseErrorAction)
        {
            return parsed.Invoke(new() { EnableDefaultExceptionHandler = false, Output = terminal.Writer, Error = terminal.ErrorWriter });
        }

        var error = parsed.Errors.FirstOrDefault(e => e.Message.StartsWith("Unrecognized", StringComparison.Ordinal)) ?? parsed.Errors[0];
        terminal.Error($"{error.Message} (see viscolog {CommandName(parsed)}--help)");
        return (int)ExitCode.WrongCall;
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

    private static RootCommand Create(CallOutput terminal, Surroundings surroundings)
    {
        CalledCommand[] commands =
        [
            new AdviseCommand(), new FitCommand(), new PlotCommand(), new CheckCommand(), new TrendCommand(), new DriftCommand(),
            new BatchCommand(),
            new ReportCommand(), new ConvertCommand(), new FlowCommand(), new ImportCommand(), new RunsCommand(), new ShowCommand(),
            new ExportCommand(), new TemplateCommand(),
            new BenchCommand(), new PracticeCommand(), new BackupCommand(), new RestoreCommand(), new VerifyCommand(),
        ];
        var common = new CommonOptions(surroundings);
        var root = new RootCommand("Logs viscosity readings against thickener dose and says what to add next. Without a command it opens "
            + "the bench screen.");
        foreach (var command in commands)
        {
            command.Connect(common, terminal);
            root.Add(command);
        }

        foreach (var option in common.All)
        {
            root.Add(option);
        }

        root.SetAction(parsed => (int)BenchCommand.Open(new(parsed, common, terminal), null));
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new CommandHelp((HelpAction)help.Action!);
        return root;
    }

    private static string CommandName(ParseResult parsed)
    {
        var name = "";
        for (var at = parsed.CommandResult; at.Command is not RootCommand; at = (System.CommandLine.Parsing.CommandResult)at.Parent!)
        {
            name = at.Command.Name + " " + name;
        }

        return name;
    }
}

/// <summary>Ends a command's help with an example that works in a fresh checkout.</summary>
internal sealed class CommandHelp(HelpAction inner) : SynchronousCommandLineAction
{
    public override int Invoke(ParseResult parseResult)
    {
        var code = inner.Invoke(parseResult);
        var example = (parseResult.CommandResult.Command as CalledCommand)?.ExampleOfUse ?? AdviseCommand.Example;
        parseResult.InvocationConfiguration.Output.Write($"Example, from the project's folder:\n  {example}\n");
        return code;
    }
}
