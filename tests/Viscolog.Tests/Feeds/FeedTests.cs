using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using Viscolog.Feeds;
using Viscolog.RunFiles;

namespace Viscolog.Tests.Feeds;

/// <summary>Listening over real pseudo terminals, real sockets and real files, with what goes wrong on them.</summary>
public sealed class FeedTests
{
    [Fact]
    public void A_serial_port_is_listened_to_unplugged_and_plugged_in_again()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        var folder = Directory.CreateTempSubdirectory("viscolog-feed-").FullName;
        var port = Path.Combine(folder, "port");
        var pty = new Pty();
        File.CreateSymbolicLink(port, pty.Port);
        using var heard = new Heard("serial:" + port, "viscosity_mpas=1; temp_c=2");
        heard.WaitFor(FeedState.Open);
        Thread.Sleep(600); // The instrument is at rest: what comes next begins a line.
        pty.Write("8420 23.1\r\nhalf a li");
        Assert.Equal([8420], heard.Values(1));
        pty.Write("ne\r\n9000 23.2\r\n123");
        Assert.Equal([8420, 9000], heard.Values(2));
        Assert.Equal(1, heard.Misread);

        // Half a line before the plug is pulled is no reading, and none with what comes after.
        pty.Dispose();
        heard.WaitFor(FeedState.Lost);
        File.Delete(port);
        pty = new Pty();
        File.CreateSymbolicLink(port, pty.Port);
        heard.WaitFor(FeedState.Back);
        pty.Write("45 23.0\n12346 23.0\n");
        Assert.Equal([8420, 9000, 12346], heard.Values(3));
        pty.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void Noise_of_another_speed_is_named_and_never_a_reading()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var pty = new Pty();
        using var heard = new Heard("serial:" + pty.Port + "@19200", "viscosity_mpas=1");
        heard.WaitFor(FeedState.Open);
        var noise = new byte[4000];
        new Random(7).NextBytes(noise);
        for (var i = 0; i < noise.Length; i++)
        {
            noise[i] |= 0x80;
        }

        for (var i = 0; i < 8; i++)
        {
            pty.Write(noise[(500 * i)..((500 * i) + 500)]);
        }

        pty.Write("\n");
        Assert.Contains("19200 baud", heard.WaitFor(FeedState.Noise), StringComparison.Ordinal);
        Assert.Empty(heard.Values(0));
    }

    /// <summary>
    /// A query of SCPI (IEEE 488.2: a question mark ends it, the answer is a number of the form NR3) is sent and answered.
    /// </summary>
    [Fact]
    public void An_instrument_that_answers_only_when_asked_is_asked()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var port = ((IPEndPoint)listener.LocalEndpoint).Port;
        var answering = new Thread(() =>
        {
            using var client = listener.AcceptTcpClient();
            using var reader = new StreamReader(client.GetStream(), Encoding.ASCII);
            for (var i = 1; i <= 3; i++)
            {
                Assert.Equal("MEAS:VISC?", reader.ReadLine());
                client.GetStream().Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"+{i}.5E+03\n")));
            }
        });
        answering.Start();
        using var heard = new Heard(
            string.Create(CultureInfo.InvariantCulture, $"tcp:127.0.0.1:{port}"), "viscosity_mpas=1; ask=MEAS:VISC?; every=0.1");
        Assert.Equal([1500, 2500, 3500], heard.Values(3));
        Assert.True(answering.Join(TimeSpan.FromSeconds(10)));
    }

    [Fact]
    public void A_flood_over_TCP_is_read_whole_and_in_order_and_a_cut_wire_is_opened_again()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var port = ((IPEndPoint)listener.LocalEndpoint).Port;
        using var heard = new Heard(string.Create(CultureInfo.InvariantCulture, $"tcp:localhost:{port}"), "viscosity_mpas=1");
        using (var client = listener.AcceptTcpClient())
        {
            var text = string.Concat(Enumerable.Range(1, 30_000).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i}\n")));
            client.GetStream().Write(Encoding.ASCII.GetBytes(text));
            Assert.Equal(Enumerable.Range(1, 30_000).Select(i => (double)i), heard.Values(30_000));
        }

        heard.WaitFor(FeedState.Lost);
        using var again = listener.AcceptTcpClient();
        again.GetStream().Write("77\n"u8);
        Assert.Equal(77, heard.Values(30_001)[^1]);
        heard.WaitFor(FeedState.Back);
    }

    /// <summary>
    /// Request and answer of the example in the MODBUS Application Protocol Specification V1.1b3, section 6.3: registers 108 to 110, asked
    /// as 107, hold 555, 0 and 100 (from memory).
    /// </summary>
    [Fact]
    public void A_Modbus_question_and_its_answer_are_those_of_the_specification()
    {
        var question = new ModbusQuestion(17, 107, 3, RegisterForm.U16);
        Assert.Equal<byte[]>([0x03, 0x00, 0x6B, 0x00, 0x03], question.Request());
        Assert.Equal("555 0 100", question.Values([0x03, 0x06, 0x02, 0x2B, 0x00, 0x00, 0x00, 0x64]));
        Assert.Equal("-1 -32768 1", (question with { Form = RegisterForm.I16 }).Values([3, 6, 0xFF, 0xFF, 0x80, 0, 0, 1]));
        Assert.Equal("8420.5", new ModbusQuestion(1, 0, 2, RegisterForm.F32).Values([3, 4, 0x46, 0x03, 0x92, 0x00]));
        Assert.Contains("exception 2", Assert.Throws<IOException>(() => question.Values([0x83, 0x02])).Message, StringComparison.Ordinal);
        Assert.Throws<IOException>(() => question.Values([0x03, 0x04, 0x02, 0x2B, 0x00, 0x00]));
    }

    [Fact]
    public void A_Modbus_device_is_asked_over_TCP_and_late_answers_are_passed_over()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var port = ((IPEndPoint)listener.LocalEndpoint).Port;
        var answering = new Thread(() =>
        {
            using var client = listener.AcceptTcpClient();
            var (stream, asked) = (client.GetStream(), new byte[12]);
            stream.ReadExactly(asked);
            byte[] answer = [asked[0], asked[1], 0, 0, 0, 7, asked[6], 3, 4, 0x46, 0x03, 0x92, 0];
            stream.Write([0, 0, .. answer[2..]]);
            stream.Write(answer.AsSpan()[..5]);
            Thread.Sleep(100);
            stream.Write(answer.AsSpan()[5..]);
            Thread.Sleep(2000);
        });
        answering.Start();
        using var heard = new Heard(
            string.Create(CultureInfo.InvariantCulture, $"modbus-tcp:127.0.0.1:{port}/1/0/2/f32"), "viscosity_mpas=1");
        Assert.Equal([8420.5], heard.Values(1));
        Assert.True(answering.Join(TimeSpan.FromSeconds(10)));
    }

    [Fact]
    public void A_Modbus_device_is_asked_over_a_serial_line_and_a_wrong_checksum_is_no_answer()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var pty = new Pty();
        using var heard = new Heard("modbus-rtu:" + pty.Port + "@19200,8N1/4/0/2/u16", "viscosity_mpas=1; temp_c=2");
        var asked = new List<byte>();
        var buffer = new byte[64];
        for (var answers = 0; answers < 2;)
        {
            asked.AddRange(buffer[..pty.Read(buffer)]);
            if (asked.Count < 8)
            {
                continue;
            }

            Assert.Equal<byte[]>([4, 3, 0, 0, 0, 2], [.. asked.Take(6)]);
            Assert.Equal(LineSums.Crc([.. asked.Take(6)]), asked[6] | (asked[7] << 8));
            asked.Clear();
            byte[] answer = [4, 3, 4, 0x20, 0xE4, 0, 23];
            var crc = LineSums.Crc(answer) + (answers == 0 ? 1 : 0);
            answers++;
            pty.Write([.. answer, (byte)crc, (byte)(crc >> 8)]);
        }

        Assert.Equal([8420], heard.Values(1));
    }

    /// <summary>
    /// Answers of any bytes, and sound ones with a byte changed: the wire breaks and is tried again, a value comes only of a frame that
    /// holds.
    /// </summary>
    [Theory]
    [InlineData(true, 1)]
    [InlineData(false, 2)]
    public void Whatever_a_Modbus_device_answers_it_is_a_value_of_a_sound_frame_or_the_wire_is_lost(bool isTcp, int seed)
    {
        var random = new Random(seed);
        var (values, lost) = (0, 0);
        for (var i = 0; i < 100_000; i++)
        {
            var answer = isTcp ? new byte[] { 0, 1, 0, 0, 0, 7, 1, 3, 4, 0x46, 0x03, 0x92, 0 } : Framed([1, 3, 4, 0x46, 0x03, 0x92, 0]);
            switch (random.Next(3))
            {
                case 0:
                    random.NextBytes(answer);
                    break;
                case 1:
                    answer[random.Next(isTcp ? 9 : answer.Length)] ^= (byte)random.Next(1, 256);
                    break;
                default:
                    answer = answer[..random.Next(answer.Length + 1)];
                    break;
            }

            using var stream = new ModbusStream(new Answering(answer), new(1, 0, 2, RegisterForm.F32), isTcp);
            try
            {
                var buffer = new byte[64];
                var text = Encoding.ASCII.GetString(buffer, 0, stream.Read(buffer, 0, buffer.Length));
                Assert.Equal("8420.5\n", text);
                values++;
            }
            catch (IOException)
            {
                lost++;
            }
        }

        Assert.InRange(values, 100, 10_000);
        Assert.Equal(100_000, values + lost);
    }

    /// <summary>What can't be written to can't be asked; it is read all the same.</summary>
    [Fact]
    public void A_file_is_not_asked_and_is_read()
    {
        var path = Path.GetTempFileName();
        using var heard = new Heard("file:" + path, "viscosity_mpas=1; ask=MEAS?; every=0.1");
        heard.WaitFor(FeedState.Open);
        File.AppendAllText(path, "8420\n");
        Assert.Equal([8420], heard.Values(1));
        Assert.Equal(0, heard.Count(FeedState.Lost));
        File.Delete(path);
    }

    /// <summary>A file that was empty when it was opened begins with a line, however soon that comes.</summary>
    [Fact]
    public void The_first_line_of_an_empty_file_is_read()
    {
        var path = Path.GetTempFileName();
        using var heard = new Heard("file:" + path, "viscosity_mpas=1", opened: () => File.AppendAllText(path, "8420\n"));
        Assert.Equal([8420], heard.Values(1));
        File.Delete(path);
    }

    /// <summary>Root may open what is taken; everybody else is refused, whether it is Viscolog or the other that came second.</summary>
    [Fact]
    public void A_port_has_one_listener()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        using var pty = new Pty();
        File.SetUnixFileMode(pty.Port, (UnixFileMode)0b110_110_110);
        Assert.Equal("", Opened(pty.Port));
        using var heard = new Heard("serial:" + pty.Port, "viscosity_mpas=1");
        heard.WaitFor(FeedState.Open);
        Assert.Contains("busy", Opened(pty.Port), StringComparison.OrdinalIgnoreCase);

        static string Opened(string port)
        {
            string[] asNobody = Environment.IsPrivilegedProcess ? ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"] : [];
            string[] call = [.. asNobody, "sh", "-c", "exec 3<> " + port];
            var start = new ProcessStartInfo(call[0], call[1..]) { RedirectStandardError = true, UseShellExecute = false };
            using var opening = Process.Start(start)!;
            var said = opening.StandardError.ReadToEnd();
            opening.WaitForExit();
            return said;
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_simulated_instrument_is_heard_as_a_real_one_and_waits_for_nobody(bool asTerminal)
    {
        if (asTerminal && !OperatingSystem.IsLinux())
        {
            return;
        }

        using var speaker = LineSpeaker.Open(asTerminal);
        for (var i = 0; i < 2000; i++)
        {
            speaker.Say("1 before anybody listens, and more than a terminal holds");
        }

        using var heard = new Heard(speaker.Source, "viscosity_mpas=1");
        heard.WaitFor(FeedState.Open);
        for (var i = 0; i < 100 && heard.Values(0).LastOrDefault() < 3; i++)
        {
            speaker.Say("3");
            Thread.Sleep(50);
        }

        Assert.Equal(3, heard.Values(1)[^1]);
    }

    /// <summary>
    /// The plug is pulled after every byte of what an instrument sends, and plugged in again while it goes on sending: whatever is heard
    /// was sent, as a whole line.
    /// </summary>
    [Fact]
    public void A_plug_pulled_at_any_byte_never_makes_a_number_of_two_halves()
    {
        const string sent = "8420 23.1\r\n123456 23.2\r\n77 22.9\r\n";
        string[] lines = ["8420", "123456", "77"];
        for (var cut = 0; cut <= sent.Length; cut++)
        {
            var cutter = new LineCutter();
            cutter.BeginInside();
            cutter.BeginLine();
            var heard = cutter.Cut(Encoding.ASCII.GetBytes(sent[..cut])).ToList();
            cutter.Drop();
            cutter.BeginInside();
            heard.AddRange(cutter.Cut(Encoding.ASCII.GetBytes(sent[cut..])));
            Assert.All(heard, l => Assert.Contains(l.Split(' ')[0], lines, StringComparer.Ordinal));
            Assert.True(heard.Count >= 2);
        }
    }

    [Fact]
    public void A_file_that_grows_is_read_from_where_it_ends_and_from_its_beginning_after_it_was_cut()
    {
        var path = Path.GetTempFileName();
        File.WriteAllText(path, "1\n2\n");
        using var heard = new Heard("file:" + path, "viscosity_mpas=1");
        heard.WaitFor(FeedState.Open);
        File.AppendAllText(path, "3\n");
        Assert.Equal([3], heard.Values(1));
        File.WriteAllText(path, "4\n");
        Assert.Equal([3, 4], heard.Values(2));
        File.Delete(path);
    }

    [Fact]
    public void What_is_not_there_is_waited_for_and_said_once()
    {
        var path = Path.Combine(Path.GetTempPath(), Guid.NewGuid().ToString());
        using var heard = new Heard("file:" + path, "viscosity_mpas=1");
        heard.WaitFor(FeedState.Lost);
        File.WriteAllText(path, "");
        heard.WaitFor(FeedState.Back);
        Assert.InRange(heard.Count(FeedState.Lost), 1, 2);
        File.Delete(path);
    }

    [Theory]
    [InlineData("serial:/dev/ttyUSB0", "serial:/dev/ttyUSB0@9600,8N1")]
    [InlineData("serial:COM3@19200,7e2", "serial:COM3@19200,7E2")]
    [InlineData("tcp:lab-4:4001", "tcp:lab-4:4001")]
    [InlineData("file:/tmp/x", "file:/tmp/x")]
    [InlineData("-", "-")]
    [InlineData("modbus-tcp:10.0.0.7:502/1/107/3/u16", "modbus-tcp:10.0.0.7:502/1/107/3/u16")]
    [InlineData("modbus-rtu:/dev/ttyUSB0@19200,8e1/4/0/2/f32", "modbus-rtu:/dev/ttyUSB0@19200,8E1/4/0/2/f32")]
    [InlineData("modbus-tcp:10.0.0.7:502/1/107/3", null)]
    [InlineData("modbus-tcp:10.0.0.7:502/1/107/126/u16", null)]
    [InlineData("serial:", null)]
    [InlineData("serial:/dev/ttyS0@fast", null)]
    [InlineData("tcp:host", null)]
    [InlineData("tcp:host:70000", null)]
    [InlineData("/dev/ttyS0", null)]
    public void A_source_is_named_or_refused(string text, string? name)
    {
        Assert.Equal(name, LineSource.Read(text, out var error)?.Name);
        Assert.Equal(name is null, error is not null);
    }

    [Fact]
    public void Of_a_series_few_are_kept_as_the_pot_stands_longer_and_what_comes_to_rest_at_once()
    {
        var begun = new DateTimeOffset(2026, 3, 2, 10, 0, 0, TimeSpan.Zero);
        var series = new Series(TimeSpan.FromSeconds(5));
        var kept = Enumerable.Range(0, 3600).Where(s => Keeps(begun.AddSeconds(s), null, TimeSpan.FromSeconds(s))).ToList();
        Assert.Equal([0, 5, 10], kept.Take(3));
        Assert.InRange(kept.Count, 40, 60);
        Assert.All(kept.Zip(kept.Skip(1)), p => Assert.True(p.Second - p.First >= 5));
        series = new(TimeSpan.FromSeconds(5));
        Assert.False(Keeps(begun, false, TimeSpan.Zero));
        Assert.True(Keeps(begun.AddSeconds(1), true, TimeSpan.Zero));
        Assert.False(Keeps(begun.AddSeconds(2), true, TimeSpan.Zero));

        bool Keeps(DateTimeOffset at, bool? isStable, TimeSpan stood)
        {
            (series, var keeps) = series.With(at, isStable, stood);
            return keeps;
        }
    }

    private static byte[] Framed(byte[] answer)
    {
        var crc = LineSums.Crc(answer);
        return [.. answer, (byte)crc, (byte)(crc >> 8)];
    }

    /// <summary>A wire that answers with these bytes, then is closed.</summary>
    private sealed class Answering(byte[] answer) : MemoryStream(answer)
    {
        public override bool CanWrite => true;

        public override void Write(byte[] buffer, int offset, int count)
        {
        }

        public override void Write(ReadOnlySpan<byte> buffer)
        {
        }
    }

    /// <summary>What a feed tells, as it comes.</summary>
    private sealed class Heard : IDisposable
    {
        private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

        private readonly ConcurrentQueue<FeedEvent> _events = new();
        private readonly Feed _feed;

        public Heard(string source, string pattern, Action? opened = null)
        {
            _feed = new(
                "it",
                LineSource.Read(source, out _)!,
                LinePattern.Read(pattern, out _)!,
                TimeProvider.System,
                e =>
                {
                    if (e is FeedEvent.Told { State: FeedState.Open })
                    {
                        opened?.Invoke();
                    }

                    _events.Enqueue(e);
                });
            _feed.Start();
        }

        public int Misread => _events.OfType<FeedEvent.Misread>().Count();

        public int Count(FeedState state) => _events.OfType<FeedEvent.Told>().Count(t => t.State == state);

        /// <summary>The bodies, once there are so many.</summary>
        public List<double> Values(int count)
        {
            Wait(() => _events.OfType<FeedEvent.Understood>().Count() >= count);
            return [.. _events.OfType<FeedEvent.Understood>().Select(u => u.Line.Of(Columns.Values[0].Column)!.Value)];
        }

        public string WaitFor(FeedState state)
        {
            Wait(() => Count(state) > 0);
            return _events.OfType<FeedEvent.Told>().First(t => t.State == state).Words;
        }

        public void Dispose() => _feed.Dispose();

        private static void Wait(Func<bool> happened)
        {
            var until = DateTime.UtcNow + Patience;
            while (!happened() && DateTime.UtcNow < until)
            {
                Thread.Sleep(10);
            }

            Assert.True(happened());
        }
    }
}
