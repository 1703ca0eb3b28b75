using System.Globalization;
using System.IO.Ports;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using Viscolog.RunFiles;
using Viscolog.Text;

namespace Viscolog.Feeds;

/// <summary>Where lines come from. The set of cases is closed.</summary>
internal abstract partial record LineSource
{
    /// <summary>How long a read waits before it looks whether it is to stop.</summary>
    protected static readonly TimeSpan Patience = TimeSpan.FromMilliseconds(250);

    private const string Form =
        "a serial port (serial:/dev/ttyUSB0 or serial:COM3@19200,7E1), tcp:HOST:PORT, a file that grows (file:PATH), - for standard input, "
        + "modbus-tcp:HOST:PORT/UNIT/FIRST/COUNT/FORM or modbus-rtu:PORT@BAUD,8E1/UNIT/FIRST/COUNT/FORM";

    private LineSource()
    {
    }

    /// <summary>As it is named.</summary>
    public abstract string Name { get; }

    /// <summary>Whether it may come back after it was lost.</summary>
    public virtual bool ComesBack => true;

    /// <summary>
    /// Whether it may be opened in the middle of a line, as a wire is on which an instrument is just sending: then what comes at once is
    /// let go to the end of its line, as half a number is a wrong one.
    /// </summary>
    public virtual bool OpensInside => false;

    /// <summary>
    /// Opens it; reads that bring nothing for a while end with <see cref="TimeoutException"/> or an inner one of sockets.
    /// </summary>
    /// <exception cref="IOException">It can't be opened now.</exception>
    public abstract Stream Open();

    /// <summary>Whether a read ended because nothing came for a while.</summary>
    public static bool IsPatience(Exception e)
        => e is TimeoutException || e.InnerException is SocketException { SocketErrorCode: SocketError.TimedOut or SocketError.WouldBlock };

    /// <summary>The source that a text names; null with the reason.</summary>
    public static LineSource? Read(string text, out string? error)
    {
        error = null;
        var typed = text.Trim();
        LineSource? source = typed switch
        {
            "-" => new Input(),
            _ when typed.StartsWith("serial:", StringComparison.OrdinalIgnoreCase) => Serial.Of(typed[7..]),
            _ when typed.StartsWith("tcp:", StringComparison.OrdinalIgnoreCase) => Tcp.Of(typed[4..]),
            _ when typed.StartsWith("modbus-tcp:", StringComparison.OrdinalIgnoreCase) => Modbus.Of(typed[11..], isTcp: true),
            _ when typed.StartsWith("modbus-rtu:", StringComparison.OrdinalIgnoreCase) => Modbus.Of(typed[11..], isTcp: false),
            _ when typed.StartsWith("file:", StringComparison.OrdinalIgnoreCase) && typed.Length > 5 => new Growing(typed[5..]),
            _ => null,
        };
        error = source is null ? $"read {OneLine.Quoted(typed)}, expected {Form}" : null;
        return source;
    }

    /// <summary>A serial port.</summary>
    internal sealed partial record Serial(string Port, int Baud, int Bits, Parity Parity, StopBits Stop) : LineSource
    {
        public override string Name => string.Create(
            CultureInfo.InvariantCulture,
            $"serial:{Port}@{Baud},{Bits}{Parity.ToString()[0]}{(Stop == StopBits.Two ? 2 : 1)}");

        public override bool OpensInside => true;

        public static Serial? Of(string text)
        {
            var match = Settings().Match(text);
            return match.Success
                ? new(
                    match.Groups["port"].Value,
                    match.Groups["baud"].Success ? int.Parse(match.Groups["baud"].ValueSpan, CultureInfo.InvariantCulture) : 9600,
                    match.Groups["bits"].Value == "7" ? 7 : 8,
                    match.Groups["parity"].Value.ToUpperInvariant() switch { "E" => Parity.Even, "O" => Parity.Odd, _ => Parity.None },
                    match.Groups["stop"].Value == "2" ? StopBits.Two : StopBits.One)
                : null;
        }

        public override Stream Open()
        {
            var port = new SerialPort(Port, Baud, Parity, Bits, Stop)
            {
                ReadTimeout = (int)Patience.TotalMilliseconds,
                WriteTimeout = 1000,
            };
            try
            {
                port.Open();
                // What came while nobody listened is no reading of now.
                port.DiscardInBuffer();
                return port.BaseStream;
            }
            catch (UnauthorizedAccessException e)
            {
                port.Dispose();
                // The library says the same of a port that is not there.
                throw Port.StartsWith('/') && !File.Exists(Port)
                    ? new IOException($"there is no {Port}; is the instrument plugged in?", e)
                    : new IOException($"another program has the port, or it may not be opened ({e.Message})", e);
            }
            catch (ArgumentException e)
            {
                port.Dispose();
                throw new IOException($"no serial port ({e.Message})", e);
            }
        }

        [
            GeneratedRegex(
                "^(?<port>[^@]+)(@(?<baud>[1-9][0-9]{2,6})(,(?<bits>[78])(?<parity>[NEOneo])(?<stop>[12]))?)?$",
                RegexOptions.ExplicitCapture,
                matchTimeoutMilliseconds: 1000),
        ]
        private static partial Regex Settings();
    }

    /// <summary>A line of text over TCP.</summary>
    internal sealed record Tcp(string Host, int Port) : LineSource
    {
        public override string Name => string.Create(CultureInfo.InvariantCulture, $"tcp:{Host}:{Port}");

        public static Tcp? Of(string text)
        {
            var mark = text.LastIndexOf(':');
            return mark > 0 && int.TryParse(text.AsSpan()[(mark + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var port)
                && port is > 0 and < 65536
                ? new(text[..mark].Trim('[', ']'), port)
                : null;
        }

        public override Stream Open()
        {
            var client = new TcpClient();
            try
            {
                client.Connect(Host, Port);
                var stream = client.GetStream();
                stream.ReadTimeout = (int)Patience.TotalMilliseconds;
                return stream;
            }
            catch (SocketException e)
            {
                client.Dispose();
                throw new IOException(e.Message, e);
            }
        }
    }

    /// <summary>The holding registers of a Modbus device, as a line of their values each second.</summary>
    internal sealed record Modbus(LineSource Wire, ModbusQuestion Question) : LineSource
    {
        private static readonly FileNames<RegisterForm> Forms = new(Enum.GetValues<RegisterForm>());

        public override string Name
        {
            get
            {
                var wire = Wire.Name[(Wire.Name.IndexOf(':', StringComparison.Ordinal) + 1)..];
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"modbus-{(Wire is Tcp ? "tcp" : "rtu")}:{wire}/{Question.Unit}/"
                        + $"{Question.First}/{Question.Count}/{Forms.Of(Question.Form)}");
            }
        }

        public static Modbus? Of(string text, bool isTcp)
        {
            var parts = text.Split('/');
            // The name of a serial port may have slashes of its own.
            var tail = parts.Length > 4 ? parts[^4..] : [];
            LineSource? wire = tail.Length == 0 ? null
                : isTcp ? Tcp.Of(string.Join('/', parts[..^4])) : Serial.Of(string.Join('/', parts[..^4]));
            return wire is not null && Forms.Find(tail[3]) is { } form
                && byte.TryParse(tail[0], NumberStyles.None, CultureInfo.InvariantCulture, out var unit)
                && ushort.TryParse(tail[1], NumberStyles.None, CultureInfo.InvariantCulture, out var first)
                && ushort.TryParse(tail[2], NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= 125
                ? new(wire, new(unit, first, count, form))
                : null;
        }

        public override Stream Open() => new ModbusStream(Wire.Open(), Question, Wire is Tcp);
    }

    /// <summary>A file that another program adds to, from where it ends now; a named pipe.</summary>
    internal sealed record Growing(string Path) : LineSource
    {
        public override string Name => "file:" + Path;

        public override Stream Open()
        {
            try
            {
                var stream = new FileStream(Path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1);
                return new GrowingStream(stream);
            }
            catch (UnauthorizedAccessException e)
            {
                throw new IOException(e.Message, e);
            }
        }
    }

    /// <summary>Standard input.</summary>
    internal sealed record Input : LineSource
    {
        public override string Name => "-";

        public override bool ComesBack => false;

        public override Stream Open() => Console.OpenStandardInput();
    }

    /// <summary>A file whose end is not the end: reads wait for more. One that was cut is read from its beginning.</summary>
    private sealed class GrowingStream : SourceStream
    {
        private readonly FileStream _file;

        public GrowingStream(FileStream file)
        {
            _file = file;
            OpensInside = file.CanSeek && file.Length > 0;
            if (OpensInside)
            {
                // The last character tells whether the file ends inside a line; it is read as what comes first.
                file.Seek(-1, SeekOrigin.End);
            }
        }

        public override bool OpensInside { get; }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var read = _file.Read(buffer, offset, count);
            if (read > 0 || !_file.CanSeek)
            {
                return read;
            }

            if (_file.Length < _file.Position)
            {
                _file.Seek(0, SeekOrigin.Begin);
            }

            Thread.Sleep(Patience);
            throw new TimeoutException();
        }

        protected override void Dispose(bool disposing)
        {
            _file.Dispose();
            base.Dispose(disposing);
        }
    }
}
