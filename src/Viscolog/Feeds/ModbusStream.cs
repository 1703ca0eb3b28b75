using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace Viscolog.Feeds;

/// <summary>The holding registers of a Modbus device as lines of text: asked every second, over TCP or a serial line.</summary>
/// <param name="wire">The wire; reads that bring nothing for a while end.</param>
/// <param name="question">What is asked.</param>
/// <param name="isTcp">Whether frames are those of TCP, else those of a serial line (RTU).</param>
internal sealed class ModbusStream(Stream wire, ModbusQuestion question, bool isTcp) : SourceStream
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(1);

    private byte[] _line = [];
    private ushort _transaction;

    public override int Read(byte[] buffer, int offset, int count)
    {
        if (_line.Length == 0)
        {
            if (_transaction > 0)
            {
                Thread.Sleep(Every);
            }

            _transaction++;
            _line = Encoding.ASCII.GetBytes(question.Values(isTcp ? AskTcp() : AskSerial()) + "\n");
        }

        var taken = Math.Min(count, _line.Length);
        _line.AsSpan(0, taken).CopyTo(buffer.AsSpan(offset));
        _line = _line[taken..];
        return taken;
    }

    protected override void Dispose(bool disposing)
    {
        wire.Dispose();
        base.Dispose(disposing);
    }

    /// <summary>
    /// Header of MODBUS Messaging on TCP/IP Implementation Guide V1.0b, section 3.1.3: transaction, protocol 0, length, unit.
    /// </summary>
    private byte[] AskTcp()
    {
        var request = question.Request();
        wire.Write([(byte)(_transaction >> 8), (byte)_transaction, 0, 0, 0, (byte)(request.Length + 1), question.Unit, .. request]);
        while (true)
        {
            var head = Exactly(7);
            var length = BinaryPrimitives.ReadUInt16BigEndian(head.AsSpan(4));
            if (head[2] != 0 || head[3] != 0 || length is < 2 or > 260)
            {
                throw new IOException("what answers is no Modbus device");
            }

            var answer = Exactly(length - 1);
            // An answer to an earlier question came late.
            if (BinaryPrimitives.ReadUInt16BigEndian(head) == _transaction)
            {
                return answer;
            }
        }
    }

    /// <summary>
    /// Frames of MODBUS over Serial Line V1.02, section 2.5.1: address, function and data, checksum with its low byte first.
    /// </summary>
    private byte[] AskSerial()
    {
        byte[] framed = [question.Unit, .. question.Request()];
        var crc = LineSums.Crc(framed);
        wire.Write([.. framed, (byte)crc, (byte)(crc >> 8)]);
        wire.Flush();
        var head = Exactly(3);
        byte[] answer = [.. head, .. Exactly((head[1] & 0x80) != 0 ? 2 : head[2] + 2)];
        var stated = answer[^2] | (answer[^1] << 8);
        if (answer[0] != question.Unit || LineSums.Crc(answer.AsSpan()[..^2]) != stated)
        {
            throw new IOException("the checksum of the device's answer does not hold");
        }

        return answer[1..^2];
    }

    private byte[] Exactly(int length)
    {
        var (held, at) = (new byte[length], 0);
        for (var tries = 0; at < length;)
        {
            try
            {
                var read = wire.Read(held, at, length - at);
                at += read > 0 ? read : throw new IOException("the device has closed the wire");
            }
            catch (Exception e) when (LineSource.IsPatience(e) && ++tries < 8)
            {
                // A device may take its time.
            }
            catch (Exception e) when (LineSource.IsPatience(e))
            {
                throw new IOException("the device does not answer", e);
            }
        }

        return held;
    }
}

/// <summary>How registers hold a value.</summary>
internal enum RegisterForm
{
    /// <summary>One register, from 0.</summary>
    U16,

    /// <summary>One register with a sign.</summary>
    I16,

    /// <summary>Two registers, the higher first, from 0.</summary>
    U32,

    /// <summary>Two registers, the higher first, with a sign.</summary>
    I32,

    /// <summary>Two registers, the higher first, of IEEE 754.</summary>
    F32,
}

/// <summary>What is asked of a Modbus device.</summary>
/// <param name="Unit">The device's address.</param>
/// <param name="First">The first holding register, from 0.</param>
/// <param name="Count">How many registers, 1 to 125.</param>
/// <param name="Form">How they hold values.</param>
internal sealed record ModbusQuestion(byte Unit, ushort First, ushort Count, RegisterForm Form)
{
    private const byte ReadHoldingRegisters = 3;

    /// <summary>
    /// The request, function 3 (MODBUS Application Protocol Specification V1.1b3, section 6.3), without address and checksum.
    /// </summary>
    public byte[] Request() => [ReadHoldingRegisters, (byte)(First >> 8), (byte)First, (byte)(Count >> 8), (byte)Count];

    /// <summary>The values of an answer, blanks between them.</summary>
    /// <exception cref="IOException">It is no answer to this question.</exception>
    public string Values(ReadOnlySpan<byte> answer)
    {
        if (answer is [ReadHoldingRegisters | 0x80, var code, ..])
        {
            throw new IOException(FormattableString.Invariant($"the device refuses: exception {code}"));
        }

        if (answer.Length < 2 + (2 * Count) || answer[0] != ReadHoldingRegisters || answer[1] != 2 * Count)
        {
            throw new IOException("the device's answer is not one to what was asked");
        }

        var (values, size) = (new List<string>(), Form is RegisterForm.U16 or RegisterForm.I16 ? 2 : 4);
        for (var at = 2; at + size <= 2 + (2 * Count); at += size)
        {
            var held = answer[at..];
            double value = Form switch
            {
                RegisterForm.U16 => BinaryPrimitives.ReadUInt16BigEndian(held),
                RegisterForm.I16 => BinaryPrimitives.ReadInt16BigEndian(held),
                RegisterForm.U32 => BinaryPrimitives.ReadUInt32BigEndian(held),
                RegisterForm.I32 => BinaryPrimitives.ReadInt32BigEndian(held),
                _ => BinaryPrimitives.ReadSingleBigEndian(held),
            };
            values.Add(double.IsFinite(value) ? value.ToString("R", CultureInfo.InvariantCulture) : "none");
        }

        return string.Join(' ', values);
    }
}
