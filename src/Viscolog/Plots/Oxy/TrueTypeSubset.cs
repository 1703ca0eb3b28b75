using System.Buffers.Binary;
using System.Text;

namespace Viscolog.Plots.Oxy;

/// <summary>
/// A TrueType font with the outlines of some glyphs alone, numbered as before, and only the tables that a PDF asks for
/// (ISO 32000-1, 9.9; the tables as the OpenType specification has them).
/// </summary>
internal sealed class TrueTypeSubset
{
    private const int TrueTypeMark = 0x00010000;

    private const int SumOfAFont = unchecked((int)0xB1B0AFBA);

    private const int PlaceOfTheSum = 8;

    private const int PlaceOfLongOffsets = 50;

    private static readonly string[] Kept = ["cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep"];

    private readonly Dictionary<string, byte[]> _tables = new(StringComparer.Ordinal);

    private TrueTypeSubset(ReadOnlySpan<byte> font)
    {
        for (var i = 0; i < Word(font, 4); i++)
        {
            var entry = font.Slice(12 + (16 * i), 16);
            _tables[Encoding.ASCII.GetString(entry[..4])] = font.Slice(Long(entry, 8), Long(entry, 12)).ToArray();
        }
    }

    private int Glyphs => Word(_tables["maxp"], 4);

    /// <summary>The subset; null where it is no TrueType font of its own.</summary>
    /// <param name="font">The font's file.</param>
    /// <param name="glyphs">The glyphs to keep; those that they are put together of are kept as well.</param>
    public static byte[]? Of(byte[] font, SortedSet<int> glyphs)
    {
        if (font.Length < 12 || Long(font, 0) != TrueTypeMark)
        {
            return null;
        }

        var made = new TrueTypeSubset(font);
        return Kept[2..8].All(made._tables.ContainsKey) ? made.With(glyphs) : null;
    }

    private byte[] With(SortedSet<int> glyphs)
    {
        var kept = new SortedSet<int>(glyphs.Where(g => g < Glyphs));
        var open = new Queue<int>(kept);
        while (open.TryDequeue(out var glyph))
        {
            foreach (var part in Parts(Outline(glyph)).Where(kept.Add))
            {
                open.Enqueue(part);
            }
        }

        using var outlines = new MemoryStream();
        var places = new byte[4 * (Glyphs + 1)];
        for (var glyph = 0; glyph < Glyphs; glyph++)
        {
            if (kept.Contains(glyph))
            {
                outlines.Write(Outline(glyph));
                outlines.SetLength((outlines.Length + 3) & ~3);
                outlines.Position = outlines.Length;
            }

            BinaryPrimitives.WriteInt32BigEndian(places.AsSpan(4 * (glyph + 1)), (int)outlines.Length);
        }

        // The widths of the others are asked for by nobody; noughts pack better.
        var widths = _tables["hmtx"];
        for (var glyph = 0; glyph < Word(_tables["hhea"], 34); glyph++)
        {
            if (!kept.Contains(glyph))
            {
                widths.AsSpan(4 * glyph, 4).Clear();
            }
        }

        (_tables["glyf"], _tables["loca"]) = (outlines.ToArray(), places);
        BinaryPrimitives.WriteInt16BigEndian(_tables["head"].AsSpan(PlaceOfLongOffsets), 1);
        return Font();
    }

    private ReadOnlySpan<byte> Outline(int glyph)
    {
        var loca = _tables["loca"];
        var (from, to) = Word(_tables["head"], PlaceOfLongOffsets) == 0
            ? (2 * Word(loca, 2 * glyph), 2 * Word(loca, 2 * (glyph + 1)))
            : (Long(loca, 4 * glyph), Long(loca, 4 * (glyph + 1)));
        return _tables["glyf"].AsSpan(from, to - from);
    }

    /// <summary>The glyphs that an outline is put together of.</summary>
    private static List<int> Parts(ReadOnlySpan<byte> outline)
    {
        const int words = 1, scale = 8, more = 0x20, scales = 0x40, matrix = 0x80;
        var parts = new List<int>();
        if (outline.Length == 0 || (short)Word(outline, 0) >= 0)
        {
            return parts;
        }

        int flags;
        var at = 10;
        do
        {
            flags = Word(outline, at);
            parts.Add(Word(outline, at + 2));
            at += 4 + ((flags & words) != 0 ? 4 : 2)
                + ((flags & scale) != 0 ? 2 : (flags & scales) != 0 ? 4 : (flags & matrix) != 0 ? 8 : 0);
        }
        while ((flags & more) != 0);
        return parts;
    }

    private byte[] Font()
    {
        string[] names = [.. Kept.Where(_tables.ContainsKey)];
        BinaryPrimitives.WriteInt32BigEndian(_tables["head"].AsSpan(PlaceOfTheSum), 0);
        var font = new byte[12 + (16 * names.Length) + names.Sum(n => (_tables[n].Length + 3) & ~3)];
        BinaryPrimitives.WriteInt32BigEndian(font, TrueTypeMark);
        var power = (int)Math.Log2(names.Length);
        foreach (var (i, value) in new[] { names.Length, 16 << power, power, (16 * names.Length) - (16 << power) }.Index())
        {
            BinaryPrimitives.WriteInt16BigEndian(font.AsSpan(4 + (2 * i)), (short)value);
        }

        var (at, head) = (12 + (16 * names.Length), 0);
        foreach (var (i, name) in names.Index())
        {
            var table = _tables[name];
            head = name == "head" ? at : head;
            table.CopyTo(font, at);
            var entry = font.AsSpan(12 + (16 * i), 16);
            Encoding.ASCII.GetBytes(name, entry);
            BinaryPrimitives.WriteInt32BigEndian(entry[4..], Sum(font.AsSpan(at, (table.Length + 3) & ~3)));
            BinaryPrimitives.WriteInt32BigEndian(entry[8..], at);
            BinaryPrimitives.WriteInt32BigEndian(entry[12..], table.Length);
            at += (table.Length + 3) & ~3;
        }

        BinaryPrimitives.WriteInt32BigEndian(font.AsSpan(head + PlaceOfTheSum), unchecked(SumOfAFont - Sum(font)));
        return font;
    }

    private static int Sum(ReadOnlySpan<byte> bytes)
    {
        var sum = 0;
        for (var i = 0; i < bytes.Length; i += 4)
        {
            sum = unchecked(sum + Long(bytes, i));
        }

        return sum;
    }

    private static int Word(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadUInt16BigEndian(bytes[at..]);

    private static int Long(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadInt32BigEndian(bytes[at..]);
}
