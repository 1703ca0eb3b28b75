using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace Viscolog.Tests.Feeds;

/// <summary>A pseudo terminal: what is written here is read by whoever opens its other end as a serial port (POSIX posix_openpt).</summary>
internal sealed class Pty : IDisposable
{
    private const int ReadWrite = 2;
    private const int NoControl = 0x100;

    private readonly SafeFileHandle _handle;
    private readonly FileStream _master;

    public Pty()
    {
        var file = Open(ReadWrite | NoControl);
        Assert.True(file >= 0 && Grant(file) == 0 && Unlock(file) == 0);
        var name = new byte[256];
        Assert.Equal(0, Name(file, name, name.Length));
        Port = System.Text.Encoding.ASCII.GetString(name, 0, Array.IndexOf(name, (byte)0));
        _handle = new(file, ownsHandle: true);
        _master = new(_handle, FileAccess.ReadWrite, 1);
    }

    /// <summary>The other end.</summary>
    public string Port { get; }

    public void Write(params byte[] bytes)
    {
        _master.Write(bytes);
        _master.Flush();
    }

    public void Write(string text) => Write(System.Text.Encoding.UTF8.GetBytes(text));

    /// <summary>What the other end says, once it is open.</summary>
    public int Read(byte[] buffer)
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                return _master.Read(buffer, 0, buffer.Length);
            }
            catch (IOException) when (tries < 500)
            {
                Thread.Sleep(20);
            }
        }
    }

    public void Dispose()
    {
        _master.Dispose();
        _handle.Dispose();
    }

    [DllImport("libc", EntryPoint = "posix_openpt", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open(int flags);

    [DllImport("libc", EntryPoint = "grantpt", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Grant(int file);

    [DllImport("libc", EntryPoint = "unlockpt", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Unlock(int file);

    [DllImport("libc", EntryPoint = "ptsname_r", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Name(int file, byte[] name, nint length);
}
