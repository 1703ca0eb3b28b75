using Viscolog.Cli;

namespace Viscolog.Tests.Support;

/// <summary>What one call of the program printed, and how it ended.</summary>
/// <param name="Code">The exit code.</param>
/// <param name="Output">Standard output.</param>
/// <param name="Error">Standard error.</param>
internal sealed record Called(int Code, string Output, string Error)
{
    /// <summary>Calls the program in this process as on a pipe.</summary>
    public static Called With(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = CommandLine.Run(args, new Terminal(output, error, showsUnicode: true, showsBold: false, width: 80), output);
        return new(code, output.ToString(), error.ToString());
    }
}
