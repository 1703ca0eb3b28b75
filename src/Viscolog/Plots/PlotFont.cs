using SkiaSharp;
using Viscolog.Core.Advising;

namespace Viscolog.Plots;

/// <summary>The font of a picture.</summary>
internal static class PlotFont
{
    /// <summary>In an SVG the viewer picks the first that it has.</summary>
    public const string SvgFamilies = "DejaVu Sans, Verdana, Noto Sans, Arial, sans-serif";

    /// <summary>What the picture itself writes beyond plain letters and digits.</summary>
    private const string OwnText = "Aa0·°±−…\u2009";

    private static readonly string[] Preferred = ["DejaVu Sans", "Verdana", "Noto Sans", "Liberation Sans", "Arial", "Helvetica"];

    /// <summary>The first preferred family on this machine; one that has the names' characters where the preferred lack them.</summary>
    public static string Covering(IReadOnlyList<RunPicture> pictures)
    {
        var text = OwnText + string.Concat(pictures.SelectMany(p => new[] { p.Name ?? "", p.Thickener, p.Limit?.Why ?? "" }).Select(PlotText.Clean));
        string[] there = [.. Preferred.Where(IsThere)];
        if (there.FirstOrDefault(f => Lacking(f, text) == 0) is { } whole)
        {
            return whole;
        }

        // Some script that the usual families lack: the one family here that lacks least, in an order that does not change.
        var all = there.Concat(SKFontManager.Default.FontFamilies.Order(StringComparer.Ordinal));
        return all.MinBy(f => Lacking(f, text)) ?? SKTypeface.Default.FamilyName;
    }

    private static bool IsThere(string family)
    {
        using var face = SKTypeface.FromFamilyName(family);
        return string.Equals(face?.FamilyName, family, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>How many of the characters the family does not have.</summary>
    private static int Lacking(string family, string text)
    {
        using var face = SKTypeface.FromFamilyName(family);
        return text.EnumerateRunes().Count(rune => face is null || !face.ContainsGlyph(rune.Value));
    }
}
