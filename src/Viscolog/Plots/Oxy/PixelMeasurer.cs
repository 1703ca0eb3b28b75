using System.Text;
using OxyPlot;
using Viscolog.Text;

namespace Viscolog.Plots.Oxy;

/// <summary>Measures texts of an SVG in px. No font is read, so that the bytes do not depend on the machine's fonts.</summary>
internal sealed class PixelMeasurer(double width, double height) : PdfRenderContext(width, height, OxyColors.White)
{
    /// <summary>The package measures in points; 96/72.</summary>
    private const double PixelsPerPoint = 96.0 / 72;

    /// <summary>DejaVu Sans is about this much wider than the Arial that the package measures.</summary>
    private const double WidthOverArial = 1.15;

    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight)
    {
        var known = new StringBuilder();
        var other = 0.0;
        foreach (var rune in (text ?? string.Empty).EnumerateRunes())
        {
            if (rune.Value < 0x100)
            {
                known.Append(rune.ToString());
            }
            else
            {
                // The package knows no widths beyond Latin-1.
                other += rune.Value == PlainText.ThinSpace ? 0.2 : 0.65 * PlainText.Columns(rune);
            }
        }

        var size = base.MeasureText(known.Length == 0 ? "x" : known.ToString(), fontFamily, fontSize, fontWeight);
        var measured = known.Length == 0 ? 0 : size.Width * PixelsPerPoint * WidthOverArial;
        return new OxySize(measured + (other * fontSize), size.Height * PixelsPerPoint);
    }
}
