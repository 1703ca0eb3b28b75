using System.IO.Compression;

namespace Viscolog.Sheets;

/// <summary>What a zip holds, before anything in it is believed.</summary>
internal static class Packing
{
    /// <summary>Why a zip is not to be read as a workbook; null where it is.</summary>
    /// <param name="stream">All of it.</param>
    /// <param name="mostParts">The most parts.</param>
    /// <param name="mostBytes">The most bytes that they may unpack to together.</param>
    /// <exception cref="InvalidDataException">It is damaged.</exception>
    public static string? Trouble(Stream stream, int mostParts, long mostBytes)
    {
        using var zip = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true);
        if (Other(zip) is { } other)
        {
            return other;
        }

        if (zip.Entries.Count > mostParts)
        {
            return FormattableString.Invariant($"a workbook of more than {mostParts} parts");
        }

        // The sizes that a zip states are its own word, so all of it is unpacked once, and kept nowhere.
        var (left, block) = (mostBytes, new byte[1 << 16]);
        foreach (var entry in zip.Entries)
        {
            using var part = entry.Open();
            for (int read; (read = part.Read(block)) > 0; left -= read)
            {
                if (read > left)
                {
                    return FormattableString.Invariant($"a workbook that unpacks to more than {mostBytes >> 20} MiB");
                }
            }
        }

        stream.Position = 0;
        return null;
    }

    private static string? Other(ZipArchive zip)
    {
        if (zip.GetEntry("xl/workbook.xml") is not null)
        {
            return null;
        }

        var kind = zip.GetEntry("mimetype") is { } type ? Beginning(type) : "";
        return kind.Contains("opendocument.spreadsheet", StringComparison.Ordinal) ? "an OpenDocument spreadsheet"
            : kind.Contains("opendocument", StringComparison.Ordinal) ? "an OpenDocument file that is no spreadsheet"
            : zip.GetEntry("word/document.xml") is not null ? "a text document"
            : zip.Entries.Any(e => e.FullName.EndsWith("workbook.bin", StringComparison.OrdinalIgnoreCase)) ? "a binary workbook (.xlsb)"
            : zip.GetEntry("[Content_Types].xml") is not null ? null
            : "a zip file";
    }

    private static string Beginning(ZipArchiveEntry entry)
    {
        using var reader = new StreamReader(entry.Open());
        var text = new char[80];
        return new(text, 0, reader.ReadBlock(text));
    }
}
