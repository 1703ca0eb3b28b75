using System.Runtime.InteropServices;
using System.Text;
using Viscolog.Text;

namespace Viscolog.Cli.Calls;

/// <summary>
/// The streams that the process was started with. A shell can start it without (<c>&gt;&amp;-</c>); the runtime then gives the free
/// number to files of its own, so that what is written to it would end up there.
/// </summary>
internal static class StandardStreams
{
    private const int GetFlags = 1;
    private const int ClosesOnExec = 1;

    /// <summary>Whether there is something to read.</summary>
    public static bool HasInput { get; } = WasOpen(0);

    /// <summary>Standard output; null where it was closed.</summary>
    public static TerminalWriter? Output() => WasOpen(1) ? Writer(Console.OpenStandardOutput(), autoFlush: false) : null;

    /// <summary>Standard error; where it was closed what is written to it is lost.</summary>
    public static TerminalWriter Error() => WasOpen(2) ? Writer(Console.OpenStandardError(), autoFlush: true) : new(TextWriter.Null);

    /// <summary>Asks at the terminal for something that is not shown while it is typed; null where there is no terminal.</summary>
    public static string? Secret(string question)
    {
        if (!HasInput || Console.IsInputRedirected || Console.IsErrorRedirected)
        {
            return null;
        }

        Console.Error.Write(question);
        var typed = new StringBuilder();
        while (Console.ReadKey(intercept: true) is { Key: not ConsoleKey.Enter } key)
        {
            if (key.Key == ConsoleKey.Backspace)
            {
                typed.Length = Math.Max(0, typed.Length - 1);
            }
            else if (!char.IsControl(key.KeyChar))
            {
                typed.Append(key.KeyChar);
            }
        }

        Console.Error.WriteLine();
        return typed.ToString();
    }

    private static TerminalWriter Writer(Stream stream, bool autoFlush)
        => new(new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = autoFlush });

    // What the runtime opens for itself is closed where another program is started, what a shell hands over is not.
    private static bool WasOpen(int number)
        => OperatingSystem.IsWindows() || (FileControl(number, GetFlags) is >= 0 and var flags && (flags & ClosesOnExec) == 0);

    [DllImport("libc", EntryPoint = "fcntl")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int FileControl(int number, int command);
}
