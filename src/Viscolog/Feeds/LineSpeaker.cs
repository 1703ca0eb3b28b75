using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace Viscolog.Feeds;

/// <summary>
/// A simulated instrument's end of the wire: says lines to whoever listens, and waits for nobody. The set of cases is closed.
/// </summary>
internal abstract class LineSpeaker : IDisposable
{
    private LineSpeaker()
    {
    }

    /// <summary>The source by which it is listened to.</summary>
    public abstract string Source { get; }

    /// <summary>A speaker on this machine: a pseudo terminal, or a port of the loopback.</summary>
    /// <exception cref="IOException">There is none to be had.</exception>
    public static LineSpeaker Open(bool asTerminal) => asTerminal ? new Terminal() : new Loopback();

    /// <summary>Says a line; nobody listening, or not fast enough, it is lost.</summary>
    public abstract void Say(string line);

    public abstract void Dispose();

    private static byte[] Bytes(string line) => Encoding.UTF8.GetBytes(line + "\r\n");

    /// <summary>Lines over TCP to anybody on this machine.</summary>
    private sealed class Loopback : LineSpeaker
    {
        private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
        private readonly ConcurrentDictionary<TcpClient, bool> _clients = new();

        public Loopback()
        {
            _listener.Start();
            _ = Task.Run(async () =>
            {
                try
                {
                    while (true)
                    {
                        var client = await _listener.AcceptTcpClientAsync().ConfigureAwait(false);
                        client.SendTimeout = 100;
                        _clients[client] = true;
                    }
                }
                catch (Exception e) when (e is SocketException or ObjectDisposedException)
                {
                    // Nobody is waited for any more.
                }
            });
        }

        public override string Source
            => string.Create(CultureInfo.InvariantCulture, $"tcp:127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}");

        public override void Say(string line)
        {
            foreach (var client in _clients.Keys)
            {
                try
                {
                    client.GetStream().Write(Bytes(line));
                }
                catch (Exception e) when (e is IOException or InvalidOperationException)
                {
                    _clients.TryRemove(client, out _);
                    client.Dispose();
                }
            }
        }

        public override void Dispose()
        {
            _listener.Dispose();
            foreach (var client in _clients.Keys)
            {
                client.Dispose();
            }
        }
    }

    /// <summary>Lines over a pseudo terminal (POSIX posix_openpt), which is listened to as a serial port is.</summary>
    private sealed class Terminal : LineSpeaker
    {
        private const int ReadWrite = 2;
        private const int NoControl = 0x100;

        private readonly FileStream _master;
        private readonly FileStream _slave;
        private readonly string _name;
        private Task _saying = Task.CompletedTask;

        public Terminal()
        {
            if (!OperatingSystem.IsLinux())
            {
                throw new IOException("pseudo terminals are made on Linux only; leave --terminals out");
            }

            var file = Posix.Open(ReadWrite | NoControl);
            var name = new byte[256];
            if (file < 0 || Posix.Grant(file) != 0 || Posix.Unlock(file) != 0 || Posix.Name(file, name, name.Length) != 0)
            {
                throw new IOException("the system gives no pseudo terminal");
            }

            _master = new(new SafeFileHandle(file, ownsHandle: true), FileAccess.ReadWrite, 1);
            _name = Encoding.ASCII.GetString(name, 0, Array.IndexOf(name, (byte)0));
            // Held open, so that listeners may come and go; as it is at first it would echo what is said.
            _slave = new(_name, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite, 1);
            var settings = new byte[256];
            var handle = (int)_slave.SafeFileHandle.DangerousGetHandle();
            if (Posix.Get(handle, settings) == 0)
            {
                Posix.MakeRaw(settings);
                _ = Posix.Set(handle, 0, settings);
            }
        }

        public override string Source => "serial:" + _name;

        public override void Say(string line)
        {
            // Nobody reads: the terminal's buffer is full, and a write would wait.
            if (_saying.IsCompleted)
            {
                _saying = Task.Run(() =>
                {
                    _master.Write(Bytes(line));
                    _master.Flush();
                });
            }
        }

        public override void Dispose()
        {
            _slave.Dispose();
            _master.Dispose();
        }
    }

    /// <summary>Calls of the system.</summary>
    private static class Posix
    {
        [DllImport("libc", EntryPoint = "posix_openpt", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Open(int flags);

        [DllImport("libc", EntryPoint = "grantpt", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Grant(int file);

        [DllImport("libc", EntryPoint = "unlockpt", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Unlock(int file);

        [DllImport("libc", EntryPoint = "ptsname_r", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Name(int file, byte[] name, nint length);

        [DllImport("libc", EntryPoint = "tcgetattr", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Get(int file, byte[] settings);

        [DllImport("libc", EntryPoint = "tcsetattr", SetLastError = true)]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern int Set(int file, int when, byte[] settings);

        [DllImport("libc", EntryPoint = "cfmakeraw")]
        [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
        public static extern void MakeRaw(byte[] settings);
    }
}
