using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace Viscolog.Output;

/// <summary>What stands behind a file's name: a file that holds bytes, or a pipe, a device or a socket.</summary>
internal static class FileKind
{
    private const int Here = -100;
    private const uint TypeAlone = 1;
    private const int ModeAt = 28;
    private const int TypeBits = 0xF000;
    private const int RegularType = 0x8000;

    /// <summary>Whether a name leads to a file that holds bytes; links are followed. True where the system can't tell.</summary>
    public static bool IsRegular(string path)
    {
        if (!File.Exists(path))
        {
            return false;
        }

        if (!OperatingSystem.IsLinux())
        {
            return true;
        }

        var status = new byte[256];
        return Status(Here, path, 0, TypeAlone, status) != 0
            || (BinaryPrimitives.ReadUInt16LittleEndian(status.AsSpan(ModeAt)) & TypeBits) == RegularType;
    }

    [DllImport("libc", EntryPoint = "statx", CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Status(int from, [MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags, uint wanted, byte[] status);
}
