using OxyPlot;
using OxyPlot.SkiaSharp;
using SkiaSharp;
using Viscolog.Output;
using Viscolog.Text;

namespace Viscolog.Plots.Oxy;

/// <summary>Pictures as the bytes of a file, and the files. The same picture gives the same bytes.</summary>
internal static class PictureFile
{
    /// <summary>Height in px of 1/96 inch of a picture that shares its page with text.</summary>
    public const int HalfHeight = 400;

    /// <summary>Height in px of 1/96 inch of a picture that stands among text.</summary>
    public const int LowHeight = 230;

    /// <summary>Width in px of 1/96 inch: 190 mm, the width of an A4 page between narrow margins.</summary>
    private const int Width = 720;

    /// <summary>Height in px of 1/96 inch.</summary>
    private const int Height = 520;

    /// <summary>Dots of the PNG for each px of 1/96 inch: 240 dots an inch in print.</summary>
    private const float PngScale = 2.5f;

    private const float PointsPerPixel = 0.75f;

    /// <summary>The same date in every file, as the clock would make equal pictures differ.</summary>
    private static readonly DateTime FixedDate = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>Draws a picture into a file, which is then either there whole or not at all.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="path">Ends in .svg, .pdf or .png: the ending decides the format.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    public static Outcome<string> Write(Picture picture, string path, bool force)
    {
        var shown = PlainText.Clean(path);
        Func<Picture, byte[]>? render = Path.GetExtension(path).ToUpperInvariant() switch
        {
            ".SVG" => p => Svg(p),
            ".PDF" => Pdf,
            ".PNG" => Png,
            _ => null,
        };
        if (render is null)
        {
            return new Refused(Say($"{shown}: the file's ending decides the format; use .svg, .pdf or .png"));
        }

        return !PlotFont.AnyHere() && !path.EndsWith(".svg", StringComparison.OrdinalIgnoreCase)
            ? new Refused(Say($"{shown}: this machine has no fonts; install one, such as DejaVu Sans, or write an .svg"))
            : NamedFile.Write(path, force, () => render(picture));
    }

    /// <summary>The picture as SVG.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="height">Its height in px of 1/96 inch.</param>
    public static byte[] Svg(Picture picture, int height = Height)
    {
        using var stream = new MemoryStream();
        var exporter = new OxyPlot.SvgExporter
        {
            Width = Width,
            Height = height,
            UseVerticalTextAlignmentWorkaround = true,
            TextMeasurer = new PixelMeasurer(Width, height),
        };
        exporter.Export(Model(picture, PlotFont.SvgFamilies), stream);
        return stream.ToArray();
    }

    private static PlotModel Model(Picture picture, string font)
    {
        var model = OxyPicture.Of(picture);
        (model.Culture, model.DefaultFont) = (Numbers, font);
        return model;
    }

    private static byte[] Pdf(Picture picture)
    {
        var model = Model(picture, PlotFont.Usual());
        using var stream = new MemoryStream();
        var about = new SKDocumentPdfMetadata
        {
            Title = model.Title,
            Creator = "Viscolog",
            Producer = "Viscolog",
            Creation = FixedDate,
            Modified = FixedDate,
        };
        using (var document = SKDocument.CreatePdf(stream, about))
        {
            var canvas = document.BeginPage(Width * PointsPerPixel, Height * PointsPerPixel);
            Draw(model, canvas, PointsPerPixel, RenderTarget.VectorGraphic);
            document.EndPage();
            document.Close();
        }

        return PdfFonts.Subset(stream.ToArray());
    }

    private static byte[] Png(Picture picture)
    {
        using var bitmap = new SKBitmap((int)(Width * PngScale), (int)(Height * PngScale));
        using (var canvas = new SKCanvas(bitmap))
        {
            Draw(Model(picture, PlotFont.Usual()), canvas, PngScale, RenderTarget.PixelGraphic);
        }

        using var image = SKImage.FromBitmap(bitmap);
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }

    private static void Draw(PlotModel model, SKCanvas canvas, float scale, RenderTarget target)
    {
        using var context = new FontFallbackContext { RenderTarget = target, SkCanvas = canvas, DpiScale = scale, UseTextShaping = true };
        IPlotModel plot = model;
        plot.Update(updateData: true);
        canvas.Clear(SKColors.White);
        plot.Render(context, new OxyRect(0, 0, Width, Height));
    }
}
