using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Commands;
using Viscolog.Cli.Practice;

namespace Viscolog.Cli;

/// <summary>The commands, wired together.</summary>
internal static class CommandLine
{
    /// <summary>Runs one call and says how it ended.</summary>
    public static int Run(string[] args, CallOutput terminal, Surroundings surroundings, TextWriter help)
    {
        try
        {
            var parsed = Create(terminal, surroundings).Parse(args);
            if (parsed.Action is ParseErrorAction)
            {
                var error = parsed.Errors.FirstOrDefault(e => e.Message.StartsWith("Unrecognized", StringComparison.Ordinal)) ?? parsed.Errors[0];
                terminal.Error($"{error.Message} (viscolog {CommandName(parsed)}--help tells more)");
                return (int)ExitCode.WrongCall;
            }

            return parsed.Invoke(new() { EnableDefaultExceptionHandler = false, Output = help });
        }
        catch (IOException e) when (e.InnerException is null && e.HResult == BrokenPipe)
        {
            // The reader of a pipe has gone; there is nobody left to tell.
            return (int)ExitCode.Done;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            terminal.Error($"a fault of ours, nothing was changed: {e.GetType().Name}: {e.Message} - please report it with the command and the run file (see README.md)");
            return (int)ExitCode.Fault;
        }
    }

    private const int BrokenPipe = 32;

    private static RootCommand Create(CallOutput terminal, Surroundings surroundings)
    {
        var common = new CommonOptions(surroundings);
        var practice = new PracticeCommand();
        var examples = new Dictionary<Command, string>
        {
            [new AdviseCommand().Create(common, terminal)] = AdviseCommand.Example,
            [new FitCommand().Create(common, terminal)] = FitCommand.Example,
            [new PlotCommand().Create(common, terminal)] = PlotCommand.Example,
            [new CheckCommand().Create(common, terminal)] = CheckCommand.Example,
            [new TrendCommand().Create(common, terminal)] = TrendCommand.Example,
            [new DriftCommand().Create(common, terminal)] = DriftCommand.Example,
            [new BatchCommand().Create(common, terminal)] = BatchCommand.Example,
            [new ReportCommand().Create(common, terminal)] = ReportCommand.Example,
            [new ConvertCommand().Create(common, terminal)] = ConvertCommand.Example,
            [new FlowCommand().Create(common, terminal)] = FlowCommand.Example,
            [new ImportCommand().Create(common, terminal)] = ImportCommand.Example,
            [new RunsCommand().Create(common, terminal)] = RunsCommand.Example,
            [new ShowCommand().Create(common, terminal)] = ShowCommand.Example,
            [new ExportCommand().Create(common, terminal)] = ExportCommand.Example,
            [new BenchCommand().Create(common, terminal)] = BenchCommand.Example,
            [practice.Create(common, terminal)] = PracticeCommand.Example,
            [new BackupCommand().Create(common, terminal)] = BackupCommand.Example,
            [new RestoreCommand().Create(common, terminal)] = RestoreCommand.Example,
            [VerifyCommand.Create(common, terminal)] = VerifyCommand.Example,
        };
        var root = new RootCommand("Logs viscosity readings against thickener dose and says what to add next. Without a command it opens the bench screen.");
        foreach (var command in examples.Keys)
        {
            root.Add(command);
        }

        foreach (var (form, example) in practice.Forms)
        {
            examples[form] = example;
        }

        common.AddTo(root);
        root.SetAction(parsed => BenchCommand.Run(new(parsed, common, terminal), null));
        examples[root] = AdviseCommand.Example;
        var option = root.Options.OfType<HelpOption>().Single();
        option.Action = new CommandHelp((HelpAction)option.Action!, examples);
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
internal sealed class CommandHelp(HelpAction inner, IReadOnlyDictionary<Command, string> examples) : SynchronousCommandLineAction
{
    public override int Invoke(ParseResult parseResult)
    {
        var code = inner.Invoke(parseResult);
        if (examples.TryGetValue(parseResult.CommandResult.Command, out var example))
        {
            parseResult.InvocationConfiguration.Output.Write($"Example, from the project's folder:\n  {example}\n");
        }

        return code;
    }
}
