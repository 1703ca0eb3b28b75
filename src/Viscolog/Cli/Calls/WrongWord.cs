using System.CommandLine;
using Viscolog.Text;

namespace Viscolog.Cli.Calls;

/// <summary>A word of a call that is no command and no option of the program.</summary>
internal static class WrongWord
{
    /// <summary>What to say of the first option that does not exist, or of a command that does not; null where all do.</summary>
    /// <param name="args">The call.</param>
    /// <param name="parsed">What was made of it.</param>
    public static Failure? Find(IReadOnlyList<string> args, ParseResult parsed)
    {
        var command = parsed.CommandResult.Command;
        string[] options =
        [
            .. AllOf(command).Concat(parsed.RootCommandResult.Command.Options.Where(o => o.Recursive))
                .SelectMany(o => o.Aliases.Prepend(o.Name)).Distinct(StringComparer.Ordinal),
        ];
        foreach (var arg in args.TakeWhile(a => a != "--"))
        {
            if (IsOption(arg) && !IsKnown(arg, options))
            {
                var name = arg[..(arg.IndexOf('=', StringComparison.Ordinal) is > 0 and var mark ? mark : arg.Length)];
                return Of(
                    $"there is no option {OneLine.Quoted(name)}",
                    Spelling.Meant(name, options.Where(o => o.Length > 2)),
                    "a file of such a name is meant with './' before it",
                    command);
            }
        }

        // The command of the deepest level is known; what follows it may be a form of it that is not.
        var word = args.FirstOrDefault(a => !a.StartsWith('-') && !IsPath(parsed, a));
        return word is not null
            && command.Subcommands.Count > 0
            && command.Arguments.Count == 0
            && parsed.UnmatchedTokens.Contains(word, StringComparer.Ordinal)
            ? OfCommand(word, command)
            : null;
    }

    private static Failure OfCommand(string word, Command command)
    {
        var meant = Spelling.Meant(word, command.Subcommands.Select(c => c.Name));
        var isRun = meant is null && (File.Exists(word) || RunSource.IsLogged(word));
        return Of(
            $"there is no command {OneLine.Quoted(word)}",
            isRun ? $"viscolog advise {OneLine.Quoted(word).Trim('\'')}" : meant,
            null,
            command);
    }

    private static Failure Of(string error, string? meant, string? otherwise, Command command)
    {
        var name = NameOf(command);
        var hint = (meant is not null ? $"did you mean '{meant}'?" : otherwise) is { } said
            ? $"{said} (see viscolog {name}--help)"
            : $"see viscolog {name}--help";
        return new($"{error}; {hint}", error, hint);
    }

    /// <summary>A command's name with those of the commands that it is a form of, a space behind each.</summary>
    public static string NameOf(Command command)
        => command is RootCommand ? "" : string.Concat(command.Parents.OfType<Command>().Take(1).Select(NameOf)) + command.Name + " ";

    // The names of commands that were found are matched ones.
    private static bool IsPath(ParseResult parsed, string word)
    {
        for (var at = parsed.CommandResult; at is not null; at = at.Parent as System.CommandLine.Parsing.CommandResult)
        {
            if (at.Command.Name == word)
            {
                return true;
            }
        }

        return false;
    }

    private static IEnumerable<Option> AllOf(Command command)
        => command.Options.Concat(command.Parents.OfType<Command>().SelectMany(p => p.Options.Where(o => o.Recursive)));

    // What begins like a number below zero is the value of an option.
    private static bool IsOption(string arg)
        => arg.Length > 1 && arg[0] == '-' && !char.IsAsciiDigit(arg[1]) && arg[1] != '.';

    // A short option may have its value right behind it.
    private static bool IsKnown(string arg, string[] options)
        => Array.Exists(options, o => o == arg
            || arg.StartsWith(o + "=", StringComparison.Ordinal)
            || arg.StartsWith(o + ":", StringComparison.Ordinal)
            || (o.Length == 2 && arg[1] != '-' && arg.StartsWith(o, StringComparison.Ordinal)));
}
