using OxyPlot;

namespace Viscolog.Plots;

/// <summary>Draws lines of text on a light ground, kept inside the plot.</summary>
internal static class ScreenLabel
{
    private const double Gap = 2;

    /// <summary>Draws the lines as a block and returns where it stands.</summary>
    /// <param name="rc">Where to draw.</param>
    /// <param name="lines">From top to bottom.</param>
    /// <param name="at">The block's upper left corner; moved so that the block stays in <paramref name="area"/>.</param>
    /// <param name="area">Where the block must stay.</param>
    /// <param name="style">Font and colour.</param>
    public static OxyRect Draw(IRenderContext rc, IReadOnlyList<string> lines, ScreenPoint at, OxyRect area, LabelStyle style)
    {
        var size = Measure(rc, lines, style);
        var left = Math.Max(area.Left, Math.Min(at.X, area.Right - size.Width));
        var top = Math.Max(area.Top, Math.Min(at.Y, area.Bottom - size.Height));
        var block = new OxyRect(left, top, size.Width, size.Height);
        rc.DrawRectangle(block, OxyColor.FromAColor(style.Ground, OxyColors.White), OxyColors.Undefined, 0, EdgeRenderingMode.Automatic);
        for (var i = 0; i < lines.Count; i++)
        {
            var y = top + (i * size.Height / lines.Count) + Gap;
            rc.DrawText(new ScreenPoint(left + Gap, y), lines[i], style.Color, style.Font, style.Size, FontWeights.Normal, 0);
        }

        return block;
    }

    /// <summary>The room that the lines take.</summary>
    public static OxySize Measure(IRenderContext rc, IReadOnlyList<string> lines, LabelStyle style)
    {
        var sizes = lines.Select(l => rc.MeasureText(l, style.Font, style.Size, FontWeights.Normal)).ToList();
        return new OxySize(sizes.Max(s => s.Width) + (2 * Gap), sizes.Max(s => s.Height + 1) * lines.Count + (2 * Gap));
    }
}
