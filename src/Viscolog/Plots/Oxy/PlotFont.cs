using SkiaSharp;

namespace Viscolog.Plots.Oxy;

/// <summary>The font of a picture.</summary>
internal static class PlotFont
{
    /// <summary>In an SVG the viewer picks the first that it has.</summary>
    public const string SvgFamilies = "DejaVu Sans, Verdana, Noto Sans, Arial, sans-serif";

    private static readonly string[] Preferred = ["DejaVu Sans", "Verdana", "Noto Sans", "Liberation Sans", "Arial", "Helvetica"];

    /// <summary>The first preferred family on this machine, else whatever it takes by itself.</summary>
    public static string Usual() => Preferred.FirstOrDefault(IsThere) ?? SKTypeface.Default.FamilyName;

    /// <summary>Whether this machine has any font at all; without one neither PDF nor PNG can show a text.</summary>
    public static bool AnyHere() => SKTypeface.Default.ContainsGlyph('A');

    private static bool IsThere(string family)
    {
        using var face = SKTypeface.FromFamilyName(family);
        return string.Equals(face?.FamilyName, family, StringComparison.OrdinalIgnoreCase);
    }
}
