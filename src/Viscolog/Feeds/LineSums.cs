using System.Globalization;
using System.Text;

namespace Viscolog.Feeds;

/// <summary>Checks the checksums of lines.</summary>
internal static class LineSums
{
    /// <summary>Whether the checksum holds; it is then cut off the line.</summary>
    public static bool Holds(LineChecksum kind, ref string line)
    {
        var digits = kind switch { LineChecksum.Crc => 4, LineChecksum.None => 0, _ => 2 };
        if (digits == 0)
        {
            return true;
        }

        if (
            line.Length <= digits
                || !int.TryParse(line.AsSpan()[^digits..], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var stated))
        {
            return false;
        }

        var held = line[..^digits];
        if (kind == LineChecksum.Xor)
        {
            if (!held.EndsWith('*'))
            {
                return false;
            }

            held = held[..^1];
            held = held.StartsWith('$') ? held[1..] : held;
        }

        var bytes = Encoding.UTF8.GetBytes(held);
        line = held.TrimEnd();
        return stated == Of(kind, bytes);
    }

    /// <summary>The line with its checksum.</summary>
    public static string With(LineChecksum kind, string line)
    {
        var bytes = Encoding.UTF8.GetBytes(line);
        return kind switch
        {
            LineChecksum.None => line,
            LineChecksum.Xor => string.Create(CultureInfo.InvariantCulture, $"${line}*{Of(kind, bytes):X2}"),
            LineChecksum.Sum => string.Create(CultureInfo.InvariantCulture, $"{line}{Of(kind, bytes):X2}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{line}{Of(kind, bytes):X4}"),
        };
    }

    private static int Of(LineChecksum kind, byte[] bytes) => kind switch
    {
        LineChecksum.Xor => bytes.Aggregate(0, (sum, b) => sum ^ b),
        LineChecksum.Sum => bytes.Sum(b => b) & 0xFF,
        _ => Crc(bytes),
    };

    /// <summary>The cyclic redundancy check of Modbus.</summary>
    public static int Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFF;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xA001 : crc >> 1;
            }
        }

        return crc;
    }
}

/// <summary>The checksum at the end of a line.</summary>
internal enum LineChecksum
{
    None,

    /// <summary>
    /// An asterisk and two hexadecimal digits: exclusive or of the characters between a leading $ and the asterisk (NMEA 0183).
    /// </summary>
    Xor,

    /// <summary>Two hexadecimal digits: the sum of the characters before them, modulo 256 (common practice, no source).</summary>
    Sum,

    /// <summary>
    /// Four hexadecimal digits: the cyclic redundancy check of the characters before them that Modbus over Serial Line (V1.02, section
    /// 6.2.2) describes: polynomial 0xA001 reflected, begun with 0xFFFF.
    /// </summary>
    Crc,
}
