using System.Buffers;
using System.Buffers.Text;
using System.Globalization;
using System.IO.Hashing;
using System.Text;
using System.Text.Json;

namespace Viscolog.Store.Journal;

/// <summary>
/// One line of the journal: its number from 1, a space, a record in JSON, a space, a checksum in eight hexadecimal digits, a line feed.
/// The checksum is the CRC-32 (ISO 3309, the one of zip and PNG) of all bytes from the first digit of the checksum before it to the
/// space in front of it, so a line that is changed, lost, doubled or out of place shows itself.
/// </summary>
internal static class JournalLine
{
    /// <summary>Digits of a checksum.</summary>
    public const int SumLength = 8;

    /// <summary>How far a checksum reaches back into the line before: that line's checksum and its line feed.</summary>
    public const int LinkLength = SumLength + 1;

    /// <summary>What is wrong with a line; null where its checksum holds.</summary>
    /// <param name="chained">The line with the checksum of the line before it in front; no line feed.</param>
    /// <param name="line">The line alone.</param>
    public static string? Fault(ReadOnlySpan<byte> chained, ReadOnlySpan<byte> line)
    {
        if (line.Length < SumLength + 2 || line[^(SumLength + 1)] != ' ')
        {
            return "has no checksum";
        }

        var stated = line[^SumLength..];
        Span<byte> sum = stackalloc byte[SumLength];
        Format(Crc32.HashToUInt32(chained[..^SumLength]), sum);
        return sum.SequenceEqual(stated)
            ? null
            : $"has the checksum {Encoding.UTF8.GetString(stated)}, its text makes {Encoding.UTF8.GetString(sum)}";
    }

    /// <summary>The checksum that a line's text makes, whatever it states; empty where it is no line.</summary>
    /// <param name="chained">The line with the checksum of the line before it in front; no line feed.</param>
    public static string SumOf(ReadOnlySpan<byte> chained)
        => chained.Length > SumLength ? Crc32.HashToUInt32(chained[..^SumLength]).ToString("x8", CultureInfo.InvariantCulture) : "";

    /// <summary>Whether a line's checksum holds behind a line with a certain checksum.</summary>
    public static bool Follows(string sum, ReadOnlySpan<byte> line)
    {
        byte[] chained = [.. Encoding.ASCII.GetBytes(sum + "\n"), .. line];
        return sum.Length > 0 && Fault(chained, line) is null;
    }

    /// <summary>Adds a line to a buffer; returns its checksum.</summary>
    /// <param name="buffer">Where to.</param>
    /// <param name="json">A writer for records.</param>
    /// <param name="record">What the line says.</param>
    /// <param name="number">Its number.</param>
    /// <param name="lastSum">The checksum of the line before it; empty for the first.</param>
    public static string Write(ArrayBufferWriter<byte> buffer, Utf8JsonWriter json, LogRecord record, long number, string lastSum)
    {
        var start = buffer.WrittenCount;
        Utf8Formatter.TryFormat(number, buffer.GetSpan(20), out var digits);
        buffer.Advance(digits);
        buffer.Write(" "u8);
        json.Reset(buffer);
        RecordJson.Write(json, record);
        json.Flush();
        buffer.Write(" "u8);
        // The checksum begins in the line before, which may have left the buffer.
        var crc = new Crc32();
        crc.Append(Encoding.ASCII.GetBytes(lastSum.Length > 0 ? lastSum + "\n" : ""));
        crc.Append(buffer.WrittenSpan[start..]);
        var sum = crc.GetCurrentHashAsUInt32().ToString("x8", CultureInfo.InvariantCulture);
        buffer.Write(Encoding.ASCII.GetBytes(sum + "\n"));
        return sum;
    }

    /// <summary>The line's number; null where it has none.</summary>
    public static long? Number(ReadOnlySpan<byte> line)
        => Utf8Parser.TryParse(line, out long number, out var used) && used < line.Length && line[used] == ' ' ? number : null;

    /// <summary>The record in JSON.</summary>
    public static ReadOnlySpan<byte> Json(ReadOnlySpan<byte> line)
    {
        var (start, end) = (line.IndexOf((byte)' ') + 1, line.Length - SumLength - 1);
        return start <= end ? line[start..end] : [];
    }

    private static void Format(uint sum, Span<byte> digits) => Utf8Formatter.TryFormat(sum, digits, out _, new('x', SumLength));
}
