using System.Runtime.InteropServices;
using System.Runtime.Versioning;

namespace Viscolog.Cli.Calls;

/// <summary>
/// The console of Windows while a call writes to it. It starts with an old code page, and before Windows 11 without escape sequences;
/// both are set for the call and put back after it. Output that goes elsewhere is left as it is: whoever reads it decides how.
/// </summary>
internal sealed class WindowsConsole : IDisposable
{
    private const uint Utf8 = 65001;
    private const uint TakesSequences = 4;
    private const int OutputNumber = -11;
    private const int ErrorNumber = -12;

    private readonly List<Action> _restore = [];

    private WindowsConsole()
    {
    }

    /// <summary>The console made ready; nothing where this is not Windows or there is no console.</summary>
    public static WindowsConsole? Ready()
    {
        if (!OperatingSystem.IsWindows())
        {
            return null;
        }

        var console = new WindowsConsole();
        var takes = console.Take(OutputNumber);
        if (console.Take(ErrorNumber) || takes)
        {
            console.SetPage();
        }

        return console;
    }

    /// <summary>The arguments with files in place of patterns of their names, which the shells of Windows leave to the program.</summary>
    public static string[] Expanded(string[] args) => OperatingSystem.IsWindows() ? [.. args.SelectMany(Files)] : args;

    /// <summary>The files that a pattern names, in order; the argument as it is where it is none, or names no file.</summary>
    internal static IEnumerable<string> Files(string argument)
    {
        if (argument.StartsWith('-') || argument.Contains('=', StringComparison.Ordinal) || !argument.AsSpan().ContainsAny('*', '?'))
        {
            return [argument];
        }

        var folder = Path.GetDirectoryName(argument);
        try
        {
            string[] names =
            [
                .. Directory.EnumerateFiles(string.IsNullOrEmpty(folder) ? "." : folder, Path.GetFileName(argument))
                    .Select(f => Path.Combine(folder ?? "", Path.GetFileName(f))).Order(StringComparer.OrdinalIgnoreCase),
            ];
            return names.Length > 0 ? names : [argument];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return [argument];
        }
    }

    /// <summary>Puts back what was found.</summary>
    public void Dispose() => _restore.ForEach(restore => restore());

    [SupportedOSPlatform("windows")]
    private bool Take(int number)
    {
        var handle = GetStdHandle(number);
        if (!GetConsoleMode(handle, out var mode))
        {
            return false;
        }

        if ((mode & TakesSequences) == 0 && SetConsoleMode(handle, mode | TakesSequences))
        {
            _restore.Add(() => SetConsoleMode(handle, mode));
        }

        return true;
    }

    [SupportedOSPlatform("windows")]
    private void SetPage()
    {
        var page = GetConsoleOutputCP();
        if (page != Utf8 && SetConsoleOutputCP(Utf8))
        {
            _restore.Add(() => SetConsoleOutputCP(page));
        }
    }

    [DllImport("kernel32")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern nint GetStdHandle(int number);

    [DllImport("kernel32")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    [return: MarshalAs(UnmanagedType.Bool)]
    private static extern bool GetConsoleMode(nint handle, out uint mode);

    [DllImport("kernel32")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    [return: MarshalAs(UnmanagedType.Bool)]
    private static extern bool SetConsoleMode(nint handle, uint mode);

    [DllImport("kernel32")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    private static extern uint GetConsoleOutputCP();

    [DllImport("kernel32")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.System32)]
    [return: MarshalAs(UnmanagedType.Bool)]
    private static extern bool SetConsoleOutputCP(uint page);
}
