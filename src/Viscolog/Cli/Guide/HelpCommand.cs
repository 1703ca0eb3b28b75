using System.CommandLine;
using Viscolog.Cli.Calls;

namespace Viscolog.Cli.Guide;

/// <summary>The help of a command, asked for in words.</summary>
internal sealed class HelpCommand : CalledCommand
{
    /// <summary>Its name: it looks at all the others.</summary>
    public const string OwnName = "help";

    private readonly Argument<string[]> _words = new("COMMAND")
    {
        Description = "A command, such as 'advise' or 'practice demo'.",
        Arity = ArgumentArity.ZeroOrMore,
    };

    public HelpCommand()
        : base(
            OwnName, "Show what a command does and takes; the same as --help after it.", "dotnet run --project src/Viscolog -- help advise")
        => Take(_words);

    protected override ExitCode Run(Invocation call)
    {
        var root = Parents.OfType<RootCommand>().Single();
        string[] args = [.. call.Value(_words), "--help"];
        var parsed = root.Parse(args, new() { ResponseFileTokenReplacer = null });
        if (WrongWord.Find(args, parsed) is { } wrong)
        {
            call.Terminal.Fail(wrong);
            return ExitCode.WrongCall;
        }

        return (ExitCode)parsed.Invoke(
            new() { EnableDefaultExceptionHandler = false, Output = call.Terminal.Writer, Error = call.Terminal.ErrorWriter });
    }
}
