using System.Buffers.Text;
using System.IO.Hashing;
using System.Text;

namespace Viscolog.Store;

/// <summary>
/// One line of the journal: its number from 1, a space, a record in JSON, a space, a checksum in eight hexadecimal digits, a line feed.
/// The checksum is the CRC-32 (ISO 3309, the one of zip and PNG) of all bytes from the first digit of the checksum before it to the space in
/// front of it, so a line that is changed, lost, doubled or out of place shows itself.
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
        Utf8Formatter.TryFormat(Crc32.HashToUInt32(chained[..^SumLength]), sum, out _, new('x', SumLength));
        return sum.SequenceEqual(stated) ? null : $"has the checksum {Encoding.UTF8.GetString(stated)}, its text makes {Encoding.UTF8.GetString(sum)}";
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
}
