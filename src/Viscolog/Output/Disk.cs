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

    private const UnixFileMode Rights = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.GroupWrite
        | UnixFileMode.OtherRead | UnixFileMode.OtherWrite;

    // Linux's numbers: a signal came, ask again; what somebody else has; a disk that fails or is full.
    private const int Interrupted = 4;
    private static readonly int[] Taken = [11, 13];
    private static readonly int[] Failing = [5, 28, 122];

    // Linux: a lock on a file that belongs to one opening of it and keeps other openings out, shared or alone.
    private const int SetLock = 37;

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
                throw new IOException($"the disk did not accept it: {Marshal.GetPInvokeErrorMessage(error)}");
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
    /// <exception cref="IOException">The disk could not do it.</exception>
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

        var error = Flush(handle) == 0 ? 0 : Marshal.GetLastPInvokeError();
        _ = Close(handle);
        return Failing.Contains(error)
            ? throw new IOException($"the disk did not accept the names in {folder}: {Marshal.GetPInvokeErrorMessage(error)}")
            : error == 0;
    }

    /// <summary>
    /// Keeps an open file to this opening of it, or to several that only read; false where another one has it. It ends with the opening.
    /// Other programs notice only where they ask too; where the system has no such thing everybody gets it.
    /// </summary>
    public virtual bool Claim(FileStream file, bool isShared)
    {
        if (!OperatingSystem.IsLinux())
        {
            return true;
        }

        var whole = new FileRange { Kind = (short)(isShared ? 0 : 1) };
        return Control(file.SafeFileHandle, SetLock, ref whole) == 0 || !Taken.Contains(Marshal.GetLastPInvokeError());
    }

    /// <summary>Makes a folder whose name lasts, also where somebody made it before.</summary>
    public void KeepFolder(string folder)
    {
        if (Directory.Exists(folder) && Path.GetDirectoryName(folder) is { Length: > 0 } above)
        {
            FlushFolder(above);
        }

        MakeFolder(folder);
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

    /// <summary>Who may read and write a file; null where it is not there or the system has no such thing.</summary>
    public static UnixFileMode? ModeOf(string path)
        => OperatingSystem.IsWindows() || !File.Exists(path) ? null : File.GetUnixFileMode(path) & Rights;

    /// <summary>Opens a file to those of another one, where that is there.</summary>
    public static void Restrict(string path, string like)
    {
        if (!OperatingSystem.IsWindows() && ModeOf(like) is { } mode)
        {
            File.SetUnixFileMode(path, mode);
        }
    }

    /// <summary>Makes a file that is not there yet, open to those of a mode; to whom the system opens new files where it is null.</summary>
    public static FileStream New(string path, UnixFileMode? mode)
    {
        var options = new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.Write,
            Share = FileShare.None,
            BufferSize = 0,
        };
        if (mode is { } wanted && !OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = wanted;
        }

        var file = new FileStream(path, options);
        if (mode is { } exact && !OperatingSystem.IsWindows())
        {
            // The process's own mask may have taken away what the file had before.
            File.SetUnixFileMode(file.SafeFileHandle, exact);
        }

        return file;
    }

    /// <summary>
    /// Writes the rest of a file to a new one, open to the same people, whose bytes are on the disk then, though not yet its name.
    /// </summary>
    /// <param name="from">The file, at the place to begin.</param>
    /// <param name="to">The new one.</param>
    /// <param name="most">So many bytes at most.</param>
    /// <exception cref="IOException">A file or link of that name is there, or it can't be written.</exception>
    public void Copy(FileStream from, string to, long most = long.MaxValue)
    {
        using var target = New(to, ModeOf(from));
        var block = new byte[BlockLength];
        while (from.Read(block.AsSpan(0, (int)Math.Min(block.Length, most))) is > 0 and var length)
        {
            Write(target, block.AsSpan(0, length));
            most -= length;
        }

        Flush(target);
    }

    private static UnixFileMode? ModeOf(FileStream file)
        => OperatingSystem.IsWindows() ? null : File.GetUnixFileMode(file.SafeFileHandle) & Rights;

    [DllImport("libc", EntryPoint = "open", CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open([MarshalAs(UnmanagedType.LPUTF8Str)] string path, int flags);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Flush(SafeFileHandle file);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Flush(int handle);

    [DllImport("libc", EntryPoint = "fcntl", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Control(SafeFileHandle file, int command, ref FileRange range);

    [DllImport("libc", EntryPoint = "close")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Close(int handle);

    /// <summary>The system's struct flock; zeros mean the whole file.</summary>
    [StructLayout(LayoutKind.Sequential)]
    private struct FileRange
    {
        public short Kind;
        public short From;
        public long Start;
        public long Length;
        public int Process;
    }
}
