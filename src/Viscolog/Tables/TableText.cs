using System.Buffers;
using System.Text;
using System.Text.Unicode;
using Viscolog.Sheets;

namespace Viscolog.Tables;

/// <summary>A file's table as text in UTF-8, whatever it came in: CSV in UTF-8 or UTF-16, or the first sheet of a workbook.</summary>
/// <param name="Bytes">The text, without byte order mark.</param>
/// <param name="RowOfLine">The row of the sheet of each line of the text, the first at 0; null where the text is the file's own.</param>
internal sealed record TableText(ReadOnlyMemory<byte> Bytes, IReadOnlyList<int>? RowOfLine)
{
    /// <summary>What a file's text has to be.</summary>
    public const string Utf8Expected = "text in UTF-8; save the file again as CSV in UTF-8";

    private static readonly byte[] LittleEndian = [0xFF, 0xFE];
    private static readonly byte[] BigEndian = [0xFE, 0xFF];

    /// <summary>The text of a file; null where it is refused.</summary>
    /// <param name="bytes">All of the file.</param>
    /// <param name="findings">What was found so far.</param>
    /// <param name="described">The kind of file and what stands in it, to show where it is none.</param>
    public static TableText? Of(ReadOnlyMemory<byte> bytes, Findings findings, string described)
    {
        if (bytes.Span.StartsWith(WorkbookReader.Mark))
        {
            return OfWorkbook(bytes, findings, described);
        }

        if (OtherFile.Named(bytes.Span) is { } other)
        {
            findings.Refuse(new(null, null, other.Name), other.Remedy is { } remedy ? $"{described}; {remedy}" : described);
            return null;
        }

        var text = Decoded(bytes, findings);
        CheckText(text.Span, findings, described);
        return findings.Well ? new(text, null) : null;
    }

    /// <summary>The first lines of a file's text, to tell its kind by; empty where it has none.</summary>
    public static ReadOnlySpan<byte> HeadOf(ReadOnlyMemory<byte> bytes, int length)
    {
        if (bytes.Span.StartsWith(WorkbookReader.Mark))
        {
            return WorkbookReader.Read(bytes, most: 1).Rows is { } rows ? SheetLines.Of(rows, length).Utf8 : [];
        }

        // A pair of surrogates that the cut goes through is of no matter here.
        return Decoded(bytes[..Math.Min(bytes.Length, length)], new("")).Span;
    }

    private static TableText? OfWorkbook(ReadOnlyMemory<byte> bytes, Findings findings, string described)
    {
        var (rows, trouble) = WorkbookReader.Read(bytes);
        if (rows is null)
        {
            findings.Refuse(new(null, null, trouble!), $"{described}, or the same in the first sheet of a workbook (.xlsx)");
            return null;
        }

        var (utf8, lines) = SheetLines.Of(rows, InputFile.Most);
        if (utf8.Length >= InputFile.Most)
        {
            findings.Refuse(
                new(null, null, FormattableString.Invariant($"a sheet of more than {InputFile.Most >> 20} MiB of text")), described);
            return null;
        }

        CheckText(utf8, findings, $"{described}, in the first sheet");
        return findings.Well ? new(utf8, lines) : null;
    }

    private static ReadOnlyMemory<byte> Decoded(ReadOnlyMemory<byte> bytes, Findings findings)
    {
        var isBig = bytes.Span.StartsWith(BigEndian);
        if (!isBig && !bytes.Span.StartsWith(LittleEndian))
        {
            return bytes.Span.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
        }

        try
        {
            return Encoding.Convert(
                new UnicodeEncoding(isBig, byteOrderMark: false, throwOnInvalidBytes: true), Encoding.UTF8, bytes[2..].ToArray());
        }
        catch (DecoderFallbackException)
        {
            findings.Refuse(new(null, null, "text in UTF-16 with letters cut in half"), Utf8Expected);
            return default;
        }
    }

    private static void CheckText(ReadOnlySpan<byte> text, Findings findings, string described)
    {
        var bad = Utf8.IsValid(text) ? text.IndexOf((byte)0) : FirstInvalid(text);
        if (text.IsEmpty)
        {
            findings.Refuse(new(null, null, "an empty file"), described);
        }
        else if (bad >= 0)
        {
            var line = 1 + LineBreaks.In(text[..bad]);
            findings.Refuse(new(line, null, FormattableString.Invariant($"byte 0x{text[bad]:X2}")), Utf8Expected);
        }
    }

    private static int FirstInvalid(ReadOnlySpan<byte> text)
    {
        var at = 0;
        while (at < text.Length && Rune.DecodeFromUtf8(text[at..], out _, out var length) == OperationStatus.Done)
        {
            at += length;
        }

        return at;
    }
}
