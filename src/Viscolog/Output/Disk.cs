using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Viscolog.Output;

/// <summary>
/// The one way to files that must outlast a power cut: each step whose order matters is a method of its own, so that the order can be
/// looked at and any step can be made to fail.
/// </summary>
internal class Disk
{
    private const int BlockLength = 1 << 16;

    // Linux's EINTR: a signal came, ask again.
    private const int Interrupted = 4;

    /// <summary>The machine's own.</summary>
    public static readonly Disk Real = new();

    /// <summary>Writes bytes where a file stands.</summary>
    public virtual void Write(FileStream file, ReadOnlySpan<byte> bytes) => file.Write(bytes);

    /// <summary>Returns when all that was written to a file is on the disk.</summary>
    /// <exception cref="IOException">It is not.</exception>
    public virtual void Flush(FileStream file)
    {
        if (!OperatingSystem.IsLinux())
        {
            file.Flush(flushToDisk: true);
            return;
        }

        // The runtime's own flush says nothing there when the disk could not do it, so the system is asked without it.
        file.Flush();
        while (Flush(file.SafeFileHandle) != 0)
        {
            var error = Marshal.GetLastPInvokeError();
            if (error != Interrupted)
            {
                throw new IOException($"the disk did not take it: {Marshal.GetPInvokeErrorMessage(error)}");
            }
        }
    }

    /// <summary>Cuts a file off and stands at its end.</summary>
    public virtual void Cut(FileStream file, long length)
    {
        file.SetLength(length);
        file.Position = length;
    }

    /// <summary>Gives a file or folder another name in the same file system.</summary>
    public virtual void Move(string from, string to, bool overwrite)
    {
        if (Directory.Exists(from))
        {
            Directory.Move(from, to);
        }
        else
        {
            File.Move(from, to, overwrite);
        }
    }

    /// <summary>Deletes a file where there is one.</summary>
    public virtual void Delete(string path) => File.Delete(path);

    /// <summary>Makes what happened to names in a folder outlast a power cut; false where the system has no such thing for it.</summary>
    public virtual bool FlushFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            // It does so by itself.
            return true;
        }

        var handle = Open(folder, 0);
        if (handle < 0)
        {
            return false;
        }

        var isFlushed = Flush(handle) == 0;
        _ = Close(handle);
        return isFlushed;
    }

    /// <summary>Makes a folder, and those above it where they are missing, with names that last.</summary>
    public void MakeFolder(string folder)
    {
        if (Directory.Exists(folder))
        {
            return;
        }

        if (Path.GetDirectoryName(folder) is not { Length: > 0 } above)
        {
            Directory.CreateDirectory(folder);
            return;
        }

        MakeFolder(above);
        Directory.CreateDirectory(folder);
        FlushFolder(above);
    }

    /// <summary>Writes the rest of a file to a new one, whose bytes are on the disk then, though not yet its name.</summary>
    /// <exception cref="IOException">A file of that name is there, or it can't be written.</exception>
    public void Copy(FileStream from, string to)
    {
        using var target = new FileStream(to, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        var block = new byte[BlockLength];
        while (from.Read(block) is > 0 and var length)
        {
            Write(target, block.AsSpan(0, length));
        }

        Flush(target);
    }

    [DllImport("libc", EntryPoint = "open", CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Flush(SafeFileHandle file);

    [DllImport("libc", EntryPoint = "fsync")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Flush(int handle);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);
}
