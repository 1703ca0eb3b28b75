using System.Text;
using OxyPlot;
using OxyPlot.SkiaSharp;
using SkiaSharp;

namespace Viscolog.Plots.Oxy;

/// <summary>Draws texts whose characters no single font has piece by piece, each piece in a font that has it.</summary>
internal sealed class FontFallbackContext : SkiaRenderContext, IRenderContext
{
    private readonly Dictionary<int, string?> _families = [];
    private readonly Dictionary<string, SKTypeface> _faces = new(StringComparer.Ordinal);

    /// <inheritdoc />
    OxySize IRenderContext.MeasureText(string text, string? fontFamily, double fontSize, double fontWeight)
    {
        var pieces = Pieces(text ?? "", fontFamily ?? PlotFont.Usual());
        var sizes = pieces.ConvertAll(p => MeasureText(p.Text, p.Family, fontSize, fontWeight));
        return sizes.Count == 0 ? OxySize.Empty : new OxySize(sizes.Sum(s => s.Width), sizes.Max(s => s.Height));
    }

    /// <inheritdoc />
    void IRenderContext.DrawText(
        ScreenPoint p,
        string text,
        OxyColor fill,
        string? fontFamily,
        double fontSize,
        double fontWeight,
        double rotation,
        HorizontalAlignment horizontalAlignment,
        VerticalAlignment verticalAlignment,
        OxySize? maxSize)
    {
        var pieces = Pieces(text ?? "", fontFamily ?? PlotFont.Usual());
        if (pieces.Count <= 1)
        {
            var family = pieces.Count == 0 ? fontFamily : pieces[0].Family;
            DrawText(p, text, fill, family, fontSize, fontWeight, rotation, horizontalAlignment, verticalAlignment, maxSize);
            return;
        }

        double[] widths = [.. pieces.Select(x => MeasureText(x.Text, x.Family, fontSize, fontWeight).Width)];
        var along = new ScreenVector(Math.Cos(rotation * Math.PI / 180), Math.Sin(rotation * Math.PI / 180));
        var before = horizontalAlignment switch { HorizontalAlignment.Left => 0, HorizontalAlignment.Center => 0.5, _ => 1 };
        var at = p - (along * (widths.Sum() * before));
        foreach (var (i, piece) in pieces.Index())
        {
            DrawText(at, piece.Text, fill, piece.Family, fontSize, fontWeight, rotation, HorizontalAlignment.Left, verticalAlignment, null);
            at += along * widths[i];
        }
    }

    protected override void Dispose(bool disposing)
    {
        foreach (var face in _faces.Values)
        {
            face.Dispose();
        }

        _faces.Clear();
        base.Dispose(disposing);
    }

    private List<(string Text, string Family)> Pieces(string text, string family)
    {
        var pieces = new List<(string Text, string Family)>();
        foreach (var rune in text.EnumerateRunes())
        {
            var its = Has(family, rune) ? family : Other(rune) ?? family;
            if (pieces.Count > 0 && pieces[^1].Family == its)
            {
                pieces[^1] = (pieces[^1].Text + rune, its);
            }
            else
            {
                pieces.Add((rune.ToString(), its));
            }
        }

        return pieces;
    }

    /// <summary>The first family here, in an order that does not change, that has the character.</summary>
    private string? Other(Rune rune)
    {
        if (!_families.TryGetValue(rune.Value, out var family))
        {
            family = SKFontManager.Default.FontFamilies.Order(StringComparer.Ordinal).FirstOrDefault(f => Has(f, rune));
            _families[rune.Value] = family;
        }

        return family;
    }

    private bool Has(string family, Rune rune)
    {
        if (!_faces.TryGetValue(family, out var face))
        {
            face = SKTypeface.FromFamilyName(family);
            _faces[family] = face;
        }

        return face.ContainsGlyph(rune.Value);
    }
}
