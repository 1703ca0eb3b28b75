using Viscolog.Core.Practice;
using Viscolog.Output;
using Viscolog.Plots;
using Viscolog.Plots.Oxy;
using Viscolog.Text;

namespace Viscolog.Reports;

/// <summary>Practice games as a file: a picture, or a handout to print; the file's ending decides.</summary>
internal static class PracticeFile
{
    /// <summary>What the endings are.</summary>
    public static string Endings => Say(".svg, .pdf or .png for the picture, .html or .txt for a handout");

    /// <summary>Writes it.</summary>
    /// <param name="players">From one to three, all on the same pot.</param>
    /// <param name="path">Where.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    /// <param name="today">The day that a handout bears.</param>
    public static Outcome<string> Write(IReadOnlyList<NamedPath> players, string path, bool force, DateOnly today)
        => Path.GetExtension(path).ToUpperInvariant() switch
        {
            ".HTML" or ".HTM" or ".TXT" => PaperFile.Write(PracticeHandout.Of(players, today), path, force),
            ".SVG" or ".PDF" or ".PNG" => PictureFile.Write(PracticePlot.Of(players), path, force),
            _ => new Refused(Say($"{PlainText.Clean(path)}: the file's ending decides the format; use {Endings}")),
        };
}
