using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;

namespace Viscolog.Plots.Oxy;

/// <summary>
/// Takes out of a PDF what its fonts hold beyond the characters shown: the drawing library embeds TrueType fonts whole. Knows that
/// library's files alone; whatever is laid out in another way stays as it is.
/// </summary>
internal static partial class PdfFonts
{
    /// <summary>The same document with subset fonts, named as ISO 32000-1, 9.6.4 asks: six letters before the name.</summary>
    public static byte[] Subset(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        if (Objects(text) is not var (objects, table))
        {
            return pdf;
        }

        foreach (var (number, font) in Fonts(objects, "/CIDFontType2"))
        {
            var outer = Fonts(objects, FormattableString.Invariant($"/DescendantFonts [{number} 0 R]")).FirstOrDefault().Key;
            if (Reference(font, "FontDescriptor") is { } descriptor && Reference(objects[descriptor], "FontFile2") is { } file
                && outer > 0 && Shrunk(objects[file], Shown(font, objects, outer)) is { } smaller)
            {
                objects[file] = smaller;
                foreach (var named in new[] { number, descriptor, outer })
                {
                    objects[named] = Name().Replace(objects[named], FormattableString.Invariant($"${{key}}{Tag(number)}+"), 1);
                }
            }
        }

        return Written(text, objects, table);
    }

    /// <summary>The objects by number, in the file's order, and where the table of their places begins; null for another layout.</summary>
    private static (Dictionary<int, string> Objects, int Table)? Objects(string text)
    {
        var table = text.LastIndexOf("\nxref\n", StringComparison.Ordinal) + 1;
        if (table == 0 || text.IndexOf("\nxref\n", StringComparison.Ordinal) + 1 != table)
        {
            return null;
        }

        int[] places = [.. Place().Matches(text, table).Select(m => Number(m.Value[..10])).Order(), table];
        var objects = new Dictionary<int, string>();
        foreach (var (from, to) in places.Zip(places.Skip(1)))
        {
            var body = text[from..to];
            if (!int.TryParse(body.Split(' ', 2)[0], NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            {
                return null;
            }

            objects.Add(number, body);
        }

        return (objects, table);
    }

    /// <summary>The glyphs that a font shows: those that have a width or a character.</summary>
    private static SortedSet<int> Shown(string font, Dictionary<int, string> objects, int outer)
    {
        var glyphs = new SortedSet<int> { 0 };
        foreach (Match run in Widths().Matches(font[Math.Max(0, font.IndexOf("/W [", StringComparison.Ordinal))..]))
        {
            var first = Number(run.Groups["first"].Value);
            var count = run.Groups["list"] is { Success: true } list
                ? list.Value.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length
                : Number(run.Groups["last"].Value) - first + 1;
            glyphs.UnionWith(Enumerable.Range(first, count));
        }

        if (Reference(objects[outer], "ToUnicode") is { } map && Stream(objects[map]) is { } characters)
        {
            foreach (Match of in Character().Matches(Encoding.Latin1.GetString(characters)))
            {
                var first = Hex(of.Groups["first"].Value);
                var end = of.Groups["last"] is { Success: true } last ? Hex(last.Value) : first;
                glyphs.UnionWith(Enumerable.Range(first, end - first + 1));
            }
        }

        return glyphs;
    }

    private static string? Shrunk(string file, SortedSet<int> glyphs)
    {
        if (Stream(file) is not { } whole || TrueTypeSubset.Of(whole, glyphs) is not { } part)
        {
            return null;
        }

        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            zlib.Write(part);
        }

        var head = FormattableString.Invariant($"<</Length1 {part.Length}\n/Filter /FlateDecode\n/Length {packed.Length}>> stream\n");
        return file[..file.IndexOf("<<", StringComparison.Ordinal)] + head + Encoding.Latin1.GetString(packed.ToArray())
            + "\nendstream\nendobj\n";
    }

    /// <summary>What a packed stream holds; null where it is none.</summary>
    private static byte[]? Stream(string body)
    {
        if (Start().Match(body) is not { Success: true } start)
        {
            return null;
        }

        var length = Number(start.Groups["length"].Value);
        using var packed = new MemoryStream(Encoding.Latin1.GetBytes(body.Substring(start.Index + start.Length, length)));
        using var zlib = new ZLibStream(packed, CompressionMode.Decompress);
        using var whole = new MemoryStream();
        zlib.CopyTo(whole);
        return whole.ToArray();
    }

    private static byte[] Written(string text, Dictionary<int, string> objects, int table)
    {
        var file = new StringBuilder(text[..text.IndexOf(objects.Values.First(), StringComparison.Ordinal)]);
        var places = new SortedDictionary<int, int>();
        foreach (var (number, body) in objects)
        {
            places[number] = file.Length;
            file.Append(body);
        }

        var start = file.Length;
        var old = text[table..];
        file.Append(old, 0, Place().Match(old).Index);
        foreach (var place in places.Values)
        {
            file.Append(CultureInfo.InvariantCulture, $"{place:0000000000} 00000 n \n");
        }

        var trailer = old.IndexOf("trailer", StringComparison.Ordinal);
        file.Append(old, trailer, old.IndexOf("startxref", StringComparison.Ordinal) - trailer);
        file.Append(CultureInfo.InvariantCulture, $"startxref\n{start}\n%%EOF\n");
        return Encoding.Latin1.GetBytes(file.ToString());
    }

    /// <summary>The fonts that say this of themselves; a title may say anything.</summary>
    private static KeyValuePair<int, string>[] Fonts(Dictionary<int, string> objects, string said)
        => [.. objects.Where(o => o.Value.Contains(" obj\n<</Type /Font\n", StringComparison.Ordinal)
            && o.Value.Contains(said, StringComparison.Ordinal))];

    private static string Tag(int number)
        => string.Concat(Enumerable.Range(0, 6).Select(i => (char)('A' + ((number >> (4 * i)) & 15))));

    private static int? Reference(string body, string key)
    {
        var at = body.IndexOf($"/{key} ", StringComparison.Ordinal);
        return at < 0 ? null : Number(body[(at + key.Length + 2)..].Split(' ', 2)[0]);
    }

    private static int Number(string digits) => int.Parse(digits, CultureInfo.InvariantCulture);

    private static int Hex(string digits) => int.Parse(digits, NumberStyles.HexNumber, CultureInfo.InvariantCulture);

    [GeneratedRegex("[0-9]{10} 00000 n ", RegexOptions.None, 1000)]
    private static partial Regex Place();

    [GeneratedRegex("(?<key>/(BaseFont|FontName) /)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Name();

    [GeneratedRegex(@"(?<first>[0-9]+) (?:\[(?<list>[^\]]*)\]|(?<last>[0-9]+) [0-9.]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Widths();

    [GeneratedRegex(
        "^<(?<first>[0-9A-Fa-f]{4})> (<(?<last>[0-9A-Fa-f]{4})> )?<[0-9A-Fa-f]+>",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline, 1000)]
    private static partial Regex Character();

    [GeneratedRegex("/Length (?<length>[0-9]+)>> stream\n", RegexOptions.None, 1000)]
    private static partial Regex Start();
}
