using SkiaSharp;
using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>The font of a picture.</summary>
internal static class PlotFont
{
    /// <summary>In an SVG the viewer picks the first that it has.</summary>
    public const string SvgFamilies = "DejaVu Sans, Verdana, Noto Sans, Arial, sans-serif";

    private static readonly string[] Preferred = ["DejaVu Sans", "Verdana", "Noto Sans", "Liberation Sans", "Arial", "Helvetica"];

    /// <summary>The first preferred family on this machine; one that has the names' characters where the preferred lack them.</summary>
    public static string Covering(IReadOnlyList<RunPicture> pictures)
    {
        var text = string.Concat(pictures.SelectMany(p => new[] { p.Name ?? "", p.Thickener, p.Limit?.Why ?? "" }).Select(PlotText.Clean));
        string[] there = [.. Preferred.Where(IsThere)];
        foreach (var family in there)
        {
            if (Lacking(family, text) is null)
            {
                return family;
            }
        }

        var first = there.FirstOrDefault();
        using var other = Lacking(first, text) is { } missing ? SKFontManager.Default.MatchCharacter(missing) : null;
        return other?.FamilyName ?? first ?? SKTypeface.Default.FamilyName;
    }

    private static bool IsThere(string family)
    {
        using var face = SKTypeface.FromFamilyName(family);
        return string.Equals(face?.FamilyName, family, StringComparison.OrdinalIgnoreCase);
    }

    private static int? Lacking(string? family, string text)
    {
        using var face = SKTypeface.FromFamilyName(family);
        foreach (var rune in text.EnumerateRunes())
        {
            if (face is null || !face.ContainsGlyph(rune.Value))
            {
                return rune.Value;
            }
        }

        return null;
    }
}
