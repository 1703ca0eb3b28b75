namespace Viscolog.Tables;

/// <summary>Files that somebody may take for a table, told by how they begin.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Remedy">What to do; null where there is nothing to be made of it.</param>
internal sealed record OtherFile(string Name, string? Remedy)
{
    private const string SaveAgain = "open it in a spreadsheet and save it as CSV or .xlsx";

    private static readonly (byte[] Mark, OtherFile File)[] Known =
    [
        ([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1], new("a workbook or document in an old format (.xls)", SaveAgain)),
        ([.. "%PDF-"u8], new("a PDF", null)),
        ([0x89, .. "PNG"u8], new("a picture (PNG)", null)),
        ([0xFF, 0xD8, 0xFF], new("a picture (JPEG)", null)),
        ([.. "GIF8"u8], new("a picture (GIF)", null)),
        ([0x1F, 0x8B], new("a packed file (gzip)", "unpack it first")),
        ([.. "{\\rtf"u8], new("a text document (RTF)", null)),
        ([.. "SQLite format 3\0"u8], new("a database", null)),
    ];

    private static readonly (string Mark, OtherFile File)[] Texts =
    [
        ("<!doctype html", new("a web page (HTML)", null)),
        ("<html", new("a web page (HTML)", null)),
        ("<svg", new("a picture (SVG)", null)),
        ("<?xml", new("XML", null)),
        ("{", new("JSON", null)),
        ("1 {\"kind\":\"log\"", new("the journal of a log", "name the number of a run in it, with --log FOLDER")),
    ];

    /// <summary>What a file is, where it is one of these; null where it is none.</summary>
    public static OtherFile? Named(ReadOnlySpan<byte> bytes)
    {
        foreach (var (mark, file) in Known)
        {
            if (bytes.StartsWith(mark))
            {
                return file;
            }
        }

        var head = System.Text.Encoding.UTF8.GetString(bytes[..Math.Min(bytes.Length, 64)]).TrimStart('\uFEFF', ' ', '\r', '\n', '\t');
        return Array.Find(Texts, t => head.StartsWith(t.Mark, StringComparison.OrdinalIgnoreCase)).File;
    }
}
