using System.Net;
using System.Net.Sockets;

namespace Viscolog.Tests.Sharing;

/// <summary>A wire between a bench and the server that hangs, slows down or breaks after so many bytes.</summary>
internal sealed class CutWire : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly int _to;

    // The one that was connected to last.
    private TcpClient? _server;

    public CutWire(int to)
    {
        _to = to;
        _listener.Start();
        new Thread(Accept) { IsBackground = true }.Start();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>Bytes of both ways together after which a connection breaks; null for never.</summary>
    public int? BreaksAfter { get; set; }

    /// <summary>Whether the last piece before it breaks comes twice.</summary>
    public bool Doubles { get; set; }

    /// <summary>How long each piece takes.</summary>
    public TimeSpan Delay { get; set; }

    public void Dispose()
    {
        _listener.Dispose();
        _server?.Dispose();
    }

    private void Accept()
    {
        try
        {
            while (true)
            {
                var client = _listener.AcceptTcpClient();
                if (!Connect())
                {
                    client.Dispose();
                    continue;
                }

                var server = _server!;
                var left = new Left(BreaksAfter);
                new Thread(() => Carry(client, server, left)) { IsBackground = true }.Start();
                new Thread(() => Carry(server, client, left)) { IsBackground = true }.Start();
            }
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException or InvalidOperationException)
        {
            // The listener was stopped.
        }
    }

    private bool Connect()
    {
        try
        {
            _server = new("127.0.0.1", _to);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private void Carry(TcpClient from, TcpClient to, Left left)
    {
        var buffer = new byte[1 << 14];
        try
        {
            while (from.GetStream().Read(buffer, 0, buffer.Length) is > 0 and var length)
            {
                var may = left.Take(length);
                Thread.Sleep(Delay);
                to.GetStream().Write(buffer, 0, may);
                if (Doubles && may < length)
                {
                    to.GetStream().Write(buffer, 0, may);
                    Thread.Sleep(20);
                }

                if (may < length)
                {
                    break;
                }
            }
        }
        catch (Exception e) when (e is IOException or ObjectDisposedException or InvalidOperationException)
        {
            // The other way broke.
        }

        Pull(from);
        to.Dispose();
    }

    /// <summary>As a plug that is pulled: nothing more comes, whatever was on its way.</summary>
    private static void Pull(TcpClient client)
    {
        try
        {
            client.Client?.LingerState = new(true, 0);
            client.Dispose();
        }
        catch (Exception e) when (e is SocketException or ObjectDisposedException)
        {
            // It is out already.
        }
    }

    private sealed class Left(int? bytes)
    {
        private readonly Lock _lock = new();
        private int? _bytes = bytes;

        public int Take(int length)
        {
            lock (_lock)
            {
                if (_bytes is not { } left)
                {
                    return length;
                }

                var may = Math.Min(left, length);
                _bytes = left - may;
                return may;
            }
        }
    }
}
