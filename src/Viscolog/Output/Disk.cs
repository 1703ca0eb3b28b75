using System.Runtime.InteropServices;

namespace Viscolog.Output;

/// <summary>Makes what happened to files in a folder outlast a power cut.</summary>
internal static class Disk
{
    /// <summary>Flushes the names in a folder. Where the system has no such call, it does so by itself.</summary>
    public static void FlushFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var handle = Open(folder, 0);
        if (handle >= 0)
        {
            _ = Flush(handle);
            _ = Close(handle);
        }
    }

    [DllImport("libc", EntryPoint = "open", CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Flush(int handle);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);
}
