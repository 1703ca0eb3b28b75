using SkiaSharp;

namespace Viscolog.Plots.Oxy;

/// <summary>The font of a picture.</summary>
internal static class PlotFont
{
    /// <summary>In an SVG the viewer picks the first that it has.</summary>
    public const string SvgFamilies = "DejaVu Sans, Verdana, Noto Sans, Arial, sans-serif";

    private static readonly string[] Preferred = ["DejaVu Sans", "Verdana", "Noto Sans", "Liberation Sans", "Arial", "Helvetica"];

    /// <summary>The first preferred family on this machine, else the first with letters.</summary>
    public static string Usual() => Found() ?? SKTypeface.Default.FamilyName;

    /// <summary>Whether this machine has any font with letters; without one neither PDF nor PNG can show a text.</summary>
    public static bool AnyHere() => Found() is not null;

    // What a machine takes by itself may be a font of symbols alone, such as one that comes with a spreadsheet.
    private static string? Found()
        => Preferred.FirstOrDefault(IsThere) ?? SKFontManager.Default.FontFamilies.Order(StringComparer.Ordinal).FirstOrDefault(HasLetters);

    private static bool HasLetters(string family)
    {
        using var face = SKTypeface.FromFamilyName(family);
        return face?.ContainsGlyph('A') == true;
    }

    private static bool IsThere(string family)
    {
        using var face = SKTypeface.FromFamilyName(family);
        return string.Equals(face?.FamilyName, family, StringComparison.OrdinalIgnoreCase);
    }
}
