using System.Text;
using Viscolog.Output;
using Viscolog.Sheets;
using Viscolog.Text;

namespace Viscolog.Reports;

/// <summary>Writes documents to files; the file's ending decides the format.</summary>
internal static class PaperFile
{
    /// <summary>Writes one.</summary>
    /// <param name="paper">The document.</param>
    /// <param name="path">Ends in .html, .htm, .txt or .xlsx.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    public static Outcome<string> Write(Paper paper, string path, bool force) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".HTML" or ".HTM" => NamedFile.Write(path, force, () => HtmlPaper.Write(paper)),
        ".TXT" => NamedFile.Write(path, force, () => Encoding.UTF8.GetBytes(TextPaper.Write(paper))),
        ".XLSX" => NamedFile.Write(path, force, () => Workbook(paper)),
        _ => new Refused(Say($"{PlainText.Clean(path)}: the file's ending decides the format; use .html, .txt or .xlsx")),
    };

    private static byte[] Workbook(Paper paper)
    {
        using var stream = new MemoryStream();
        WorkbookWriter.Write(SheetPaper.Of(paper), stream);
        return stream.ToArray();
    }
}
