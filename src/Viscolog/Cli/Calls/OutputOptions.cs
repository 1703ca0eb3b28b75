using System.CommandLine;
using Viscolog.Output;

namespace Viscolog.Cli.Calls;

/// <summary>Where a file goes, and whether one that is there may be overwritten.</summary>
internal sealed class OutputOptions(string where, string what)
{
    public Option<string?> File { get; } = Named<string?>("FILE", where);

    public Option<bool> Force { get; } = new("--force") { Description = $"Overwrite an existing {what}." };

    public Option[] All => [File, Force];

    /// <summary>The option that says where, called the same by every command.</summary>
    public static Option<T> Named<T>(string what, string where) => new("--output", "-o", "--out") { HelpName = what, Description = where };

    /// <summary>Writes the file where one is named; null where none is.</summary>
    public Outcome<string>? Write(Invocation call, Func<string, bool, Outcome<string>> write)
        => call.Value(File) is { } path ? write(path, call.Value(Force)) : null;
}
