using System.Runtime.InteropServices;

namespace Viscolog.Tui;

/// <summary>The system's own waiting for files, poll(2) of POSIX.</summary>
internal static class SystemPoll
{
    /// <summary>There is something to read.</summary>
    public const short Readable = 1;

    /// <summary>The other end is gone, or the file is none.</summary>
    public const short Gone = 8 | 16 | 32;

    /// <summary>The file that keys come from.</summary>
    public const int Keys = 0;

    /// <summary>Whether there is a terminal whose keys can be waited for.</summary>
    public static bool CanWaitForKeys => (OperatingSystem.IsLinux() || OperatingSystem.IsMacOS()) && !Console.IsInputRedirected;

    /// <summary>Waits until one of the files has something, or for a while.</summary>
    /// <param name="entries">What is waited for; what came stands there afterwards.</param>
    /// <param name="milliseconds">The longest.</param>
    /// <returns>How many have something; 0 after the time, below 0 where a signal came.</returns>
    public static int Wait(PollEntry[] entries, int milliseconds) => Poll(entries, (nuint)entries.Length, milliseconds);

    [DllImport("libc", EntryPoint = "poll", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Poll([In, Out] PollEntry[] entries, nuint count, int milliseconds);
}

/// <summary>A file that is waited for.</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct PollEntry
{
    public int File;
    public short Events;
    public short Came;
}
