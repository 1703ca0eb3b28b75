using System.Text;
using System.Text.Unicode;

namespace Viscolog.RunFiles;

/// <summary>Reads run files; docs/file-formats.md describes them.</summary>
internal static class RunFileReader
{
    private const string Described = "a run file: header lines '# key: value', a row of column names, and a row for each event";

    /// <summary>What a file's text has to be.</summary>
    public const string Utf8Expected = "text in UTF-8; save the file again as CSV in UTF-8";

    /// <summary>Reads the file at the path.</summary>
    public static RunFileOutcome Read(string path)
    {
        if (Directory.Exists(path))
        {
            return Refused(path, "a folder", "a run file; name one of the files in it");
        }

        if (!File.Exists(path))
        {
            return Refused(path, "no such file", "a run file; check the path");
        }

        try
        {
            return Parse(path, File.ReadAllBytes(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Refused(path, $"nothing ({e.Message})", "a file that may be read; check its permissions");
        }
    }

    /// <summary>Reads a file's bytes.</summary>
    /// <param name="fileName">How refusals and warnings name it.</param>
    /// <param name="bytes">All of it.</param>
    public static RunFileOutcome Parse(string fileName, ReadOnlyMemory<byte> bytes)
    {
        var findings = new Findings(fileName);
        var file = Parse(bytes, findings);
        return findings.Refusal is { } refusal ? new RunFileOutcome.Refused(refusal) : new RunFileOutcome.Read(file! with { Warnings = findings.Warnings });
    }

    private static RunFile? Parse(ReadOnlyMemory<byte> bytes, Findings findings)
    {
        if (CheckedText(bytes, findings, Described) is not { } text || RunFileLayout.Of(text, findings) is not { } layout)
        {
            return null;
        }

        var values = new ValueReader(findings, new(layout.Separator));
        var header = RunHeader.Of(layout.Header, values);
        return findings.Well ? new TableReader(layout, values).Read(header.ToFile()) : null;
    }

    /// <summary>The text without byte order mark; null where the file is refused.</summary>
    /// <param name="bytes">All of the file.</param>
    /// <param name="findings">What was found so far.</param>
    /// <param name="described">The kind of file and what stands in it, to show where it is empty.</param>
    public static ReadOnlyMemory<byte>? CheckedText(ReadOnlyMemory<byte> bytes, Findings findings, string described)
    {
        var text = bytes.Span.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
        CheckText(text.Span, findings, described);
        return findings.Well ? text : null;
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
            var line = 1 + RunFileLayout.LineBreaks(text[..bad]);
            findings.Refuse(new(line, null, FormattableString.Invariant($"byte 0x{text[bad]:X2}")), Utf8Expected);
        }
    }

    private static int FirstInvalid(ReadOnlySpan<byte> text)
    {
        var at = 0;
        while (at < text.Length && Rune.DecodeFromUtf8(text[at..], out _, out var length) == System.Buffers.OperationStatus.Done)
        {
            at += length;
        }

        return at;
    }

    private static RunFileOutcome.Refused Refused(string path, string read, string expected) => new(new Refusal(path, null, null, read, expected));
}
