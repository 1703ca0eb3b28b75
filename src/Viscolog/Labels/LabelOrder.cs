using System.Text;
using Viscolog.Output;
using Viscolog.Reports;
using Viscolog.Text;

namespace Viscolog.Labels;

/// <summary>Labels to print: which, on what sheet, from which place on, how many.</summary>
/// <param name="Label">The label.</param>
/// <param name="Sheet">The sheet.</param>
internal sealed record LabelOrder(Label Label, LabelSheet Sheet)
{
    /// <summary>More are not printed at once.</summary>
    public const int MostCopies = 1000;

    /// <summary>The place of the first label on its sheet, from 1, counted along the rows: those before it are used up.</summary>
    public int Start { get; init; } = 1;

    /// <summary>How many.</summary>
    public int Copies { get; init; } = 1;

    /// <summary>Writes them to a file.</summary>
    /// <param name="path">Ends in .html, .htm or .txt.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    public Outcome<string> Write(string path, bool force) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".HTML" or ".HTM" => NamedFile.Write(path, force, () => LabelPage.Write(this)),
        ".TXT" => NamedFile.Write(path, force, () => Encoding.UTF8.GetBytes(Words(Label))),
        _ => new Refused($"{PlainText.Clean(path)}: the file's ending decides the format; use .html or .txt"),
    };

    /// <summary>What stands on a label, as plain text; lines end with LF.</summary>
    public static string Words(Label label)
    {
        var lines = new List<string> { PlainText.Clean($"{label.Kind}: {label.Name}") };
        lines.AddRange(label.Facts.Select(f => $"{f.Name,-8}{(f.Text is { } text ? PlainText.Clean(text) : new('_', 16))}"));
        lines.AddRange(Paragraph.Of(label.Cautions, TextPaper.Width));
        lines.AddRange(label.Code.Split('\n').Select((c, i) => $"{(i == 0 ? Say("QR code") : ""),-8}{c}"));
        return string.Concat(lines.Select(l => l + "\n"));
    }
}
