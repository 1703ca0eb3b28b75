using System.Text;

namespace Viscolog.Tests.Fuzz;

/// <summary>Makes one input of another: at the level of bytes, of cells and lines, and of what the formats know.</summary>
internal sealed class Mutation(Random random)
{
    /// <summary>The longest input.</summary>
    private const int Most = 4096;

    private static readonly byte[][] Words = [.. new[]
    {
        ",", ";", "\"", "\"\"", "\n", "\r\n", "\r", "#", "# ", ":", "=", "-", ".", "e", "E+308", "0", "-1", "1e-320", "1e999", "NaN",
        "Infinity", "1,5", "1.5", "900719925474099312345", "0x1F", "\0", "\t", " ", "\ufeff", "\u202e", "\u001b[31m", "\u2028", "é", "雨",
        "\U0001F9EA", "\\u0000", "\\", "{", "}", "[", "]", "null", "true", "base_g", "# base_g: 100\n", "# thickener: T\n", "thickener",
        "added_g", "added_pct", "added_ml", "stir_s", "wait_s", "viscosity_mpas", "viscosity_pas", "cup_s", "ku", "torque_pct", "rpm",
        "reading", "temp_c", "temp_f", "ph", "string_mm", "note", "void", "replaces", "above", "time", "fault", "lumps", "taken_g",
        "let_down_g", "water_g", "2026-03-02T09:15:00+01:00", "0001-01-01T00:00Z", "9999-12-31T23:59:59Z", "method", "krebs", "rotational",
        "iso-2431-4", "falling-ball", "slump", "target_low_mpas", "target_string_mm", "range_pct=1-5", "dilution=1:1", "active_pct=30",
        "chemistry=clay", "viscolog-materials: 1", "viscolog-oils: 1", "kind", "name", "specification", "base", "batch", "value",
        "shear_rate_1_s", "stress_pa", "certified_mpas", "certified_temp_c", "date", "\"kind\":\"row\"", "\"kind\":\"run\"",
        "\"kind\":\"batch\"", "\"is\":{", "\"at\":", "\"lines\":", "dose=", "wait=", "5 kg", "mL",
    }.Select(Encoding.UTF8.GetBytes)];

    /// <summary>Another input.</summary>
    /// <param name="from">What it is made of.</param>
    /// <param name="other">What pieces may be taken from.</param>
    public byte[] Of(byte[] from, byte[] other)
    {
        var made = from;
        for (var times = 1 + random.Next(1 << random.Next(4)); times > 0; times--)
        {
            made = Once(made, other);
        }

        return made.Length > Most ? made[..Most] : made;
    }

    private byte[] Once(byte[] from, byte[] other)
    {
        var (at, end) = Piece(from);
        return random.Next(11) switch
        {
            0 when from.Length > 0 => Changed(from, (byte)(1 << random.Next(8))),
            1 when from.Length > 0 => Changed(from, (byte)random.Next(1, 256)),
            2 => [.. from[..at], .. from[end..]],
            3 => [.. from[..end], .. from[at..end], .. from[end..]],
            4 => [.. from[..at], .. Words[random.Next(Words.Length)], .. from[at..]],
            5 => [.. from[..at], .. Words[random.Next(Words.Length)], .. from[end..]],
            6 => Lines(from),
            7 => Cell(from),
            8 => Spliced(from, other),
            9 => [.. from[..at], (byte)random.Next(256), .. from[at..]],
            _ => [.. from[..at]],
        };
    }

    private (int At, int End) Piece(byte[] from)
    {
        var at = random.Next(from.Length + 1);
        return (at, Math.Min(from.Length, at + 1 + random.Next(1 << random.Next(1, 7))));
    }

    private byte[] Changed(byte[] from, byte mask)
    {
        byte[] made = [.. from];
        made[random.Next(made.Length)] ^= mask;
        return made;
    }

    /// <summary>Two lines changed places, or one doubled or gone.</summary>
    private byte[] Lines(byte[] from)
    {
        var lines = Split(from, (byte)'\n');
        var (a, b) = (random.Next(lines.Count), random.Next(lines.Count));
        switch (random.Next(3))
        {
            case 0:
                (lines[a], lines[b]) = (lines[b], lines[a]);
                break;
            case 1:
                lines.Insert(a, lines[b]);
                break;
            default:
                lines.RemoveAt(a);
                break;
        }

        return Joined(lines, (byte)'\n');
    }

    /// <summary>A cell with another word in it, or moved.</summary>
    private byte[] Cell(byte[] from)
    {
        var lines = Split(from, (byte)'\n');
        var at = random.Next(lines.Count);
        var cells = Split(lines[at], (byte)',');
        var (a, b) = (random.Next(cells.Count), random.Next(cells.Count));
        (cells[a], cells[b]) = random.Next(2) == 0 ? (cells[b], cells[a]) : (Words[random.Next(Words.Length)], cells[b]);
        lines[at] = Joined(cells, (byte)',');
        return Joined(lines, (byte)'\n');
    }

    private byte[] Spliced(byte[] from, byte[] other)
    {
        var (at, end) = Piece(other);
        var place = random.Next(from.Length + 1);
        return [.. from[..place], .. other[at..end], .. from[place..]];
    }

    private static List<byte[]> Split(byte[] bytes, byte mark)
    {
        var (pieces, start) = (new List<byte[]>(), 0);
        for (var at = Array.IndexOf(bytes, mark); at >= 0; at = Array.IndexOf(bytes, mark, start))
        {
            pieces.Add(bytes[start..at]);
            start = at + 1;
        }

        pieces.Add(bytes[start..]);
        return pieces;
    }

    private static byte[] Joined(List<byte[]> pieces, byte mark)
    {
        var made = new List<byte>();
        foreach (var (i, piece) in pieces.Index())
        {
            if (i > 0)
            {
                made.Add(mark);
            }

            made.AddRange(piece);
        }

        return [.. made];
    }
}
