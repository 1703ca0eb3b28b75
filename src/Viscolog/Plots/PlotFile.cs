using Viscolog.Core.Advising;
using Viscolog.Core.Flow;
using Viscolog.Core.Practice;
using Viscolog.Output;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>Writes pictures to files: a file is either there whole or not at all.</summary>
internal static class PlotFile
{
    /// <summary>Draws the pictures into one file; its ending decides the format.</summary>
    /// <param name="pictures">At least one.</param>
    /// <param name="kind">Which picture.</param>
    /// <param name="path">Ends in .svg, .pdf or .png.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    /// <exception cref="ArgumentException">There is no picture.</exception>
    public static PlotOutcome Write(IReadOnlyList<RunPicture> pictures, PlotKind kind, string path, bool force)
    {
        if (pictures.Count == 0)
        {
            throw new ArgumentException("needs at least one picture", nameof(pictures));
        }

        return Write(format => PlotRenderer.Render(pictures, kind, format), path, force);
    }

    /// <summary>Draws a run with two thickeners into a file; its ending decides the format.</summary>
    /// <param name="picture">The run.</param>
    /// <param name="kind">Which picture.</param>
    /// <param name="path">Ends in .svg, .pdf or .png.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    public static PlotOutcome Write(PairPicture picture, PairKind kind, string path, bool force)
        => Write(format => PlotRenderer.Render(picture, kind, format), path, force);

    /// <summary>Draws a flow curve into a file; its ending decides the format.</summary>
    /// <param name="picture">The curve.</param>
    /// <param name="path">Ends in .svg, .pdf or .png.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    public static PlotOutcome Write(FlowPicture picture, string path, bool force)
        => Write(format => PlotRenderer.Render(picture, format), path, force);

    /// <summary>Draws a control chart into a file; its ending decides the format.</summary>
    /// <param name="picture">The chart.</param>
    /// <param name="path">Ends in .svg, .pdf or .png.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    public static PlotOutcome Write(TrendPicture picture, string path, bool force)
        => Write(format => PlotRenderer.Render(picture, format), path, force);

    /// <summary>Draws players on one practice pot into a file; its ending decides the format.</summary>
    /// <param name="players">From one to three, all on the same pot.</param>
    /// <param name="path">Ends in .svg, .pdf or .png.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    public static PlotOutcome Write(IReadOnlyList<NamedPath> players, string path, bool force)
        => Write(format => PlotRenderer.Render(players, format), path, force);

    private static PlotOutcome Write(Func<PlotFormat, byte[]> render, string path, bool force)
    {
        var shown = PlainText.Clean(path);
        if (FormatOf(path) is not { } format)
        {
            return new PlotOutcome.Refused($"{shown}: the file's ending decides the format; use .svg, .pdf or .png");
        }

        if (format != PlotFormat.Svg && !PlotFont.AnyHere())
        {
            return new PlotOutcome.Refused($"{shown}: this machine has no fonts; install one, such as DejaVu Sans, or write an .svg");
        }

        return NamedFile.Write(path, force, () => render(format)) switch
        {
            FileOutcome.Written written => new PlotOutcome.Written(written.Path),
            FileOutcome.Refused refused => new PlotOutcome.Refused(refused.Reason),
            var other => throw new ArgumentOutOfRangeException(nameof(path), other, "not a case of the closed set"),
        };
    }

    private static PlotFormat? FormatOf(string path) => Path.GetExtension(path).ToUpperInvariant() switch
    {
        ".SVG" => PlotFormat.Svg,
        ".PDF" => PlotFormat.Pdf,
        ".PNG" => PlotFormat.Png,
        _ => null,
    };
}
