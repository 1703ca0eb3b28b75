using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Viscolog.Cli;

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
