using System.Globalization;
using OxyPlot;
using OxyPlot.SkiaSharp;
using SkiaSharp;
using Viscolog.Core.Advising;
using Viscolog.Core.Flow;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;


namespace Viscolog.Plots;

/// <summary>Turns pictures into the bytes of a file; the same pictures give the same bytes.</summary>
internal static class PlotRenderer
{
    /// <summary>Width in px of 1/96 inch: 190 mm, the width of an A4 page between narrow margins.</summary>
    public const int Width = 720;

    /// <summary>Height in px of 1/96 inch.</summary>
    public const int Height = 520;

    /// <summary>Height of a picture that shares its page with text.</summary>
    private const int HalfHeight = 400;

    /// <summary>Height in px of 1/96 inch of a picture that stands among text.</summary>
    public const int LowHeight = 230;

    /// <summary>Dots of the PNG for each px of 1/96 inch: 240 dots an inch in print.</summary>
    public const float PngScale = 2.5f;

    private const float PointsPerPixel = 0.75f;

    /// <summary>The same date in every file, as the clock would make equal pictures differ.</summary>
    private static readonly DateTime FixedDate = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    // Rendering changes a model, so each file gets its own.
    public static byte[] Render(IReadOnlyList<RunPicture> pictures, PlotKind kind, PlotFormat format) => Render(Model(pictures, kind), format);

    public static byte[] Render(FlowPicture picture, PlotFormat format) => Render(FlowPlot.Build(picture), format);

    public static byte[] Render(PairPicture picture, PairKind kind, PlotFormat format) => Render(kind == PairKind.Map ? PairMapPlot.Build(picture) : PairSlicePlot.Build(picture), format);

    /// <summary>A low picture as SVG: the readings of a batch against its band.</summary>
    public static byte[] Verdict(RunPicture picture, ViscosityBand band, string wanted, Estimate found)
    {
        var model = VerdictPlot.Build(picture, band, wanted, found);
        (model.Culture, model.DefaultFont) = (CultureInfo.InvariantCulture, PlotFont.SvgFamilies);
        return Svg(model, LowHeight);
    }

    public static byte[] Render(IReadOnlyList<NamedPath> players, PlotFormat format) => Render(PracticePlot.Build(players), format);

    /// <summary>Players on a practice pot as an SVG that leaves room for text on the same page.</summary>
    public static byte[] RenderLow(IReadOnlyList<NamedPath> players) => Render(PracticePlot.Build(players), PlotFormat.Svg, HalfHeight);

    public static byte[] Render(TrendPicture picture, PlotFormat format) => Render(TrendPlot.Build(picture), format);

    private static byte[] Render(PlotModel model, PlotFormat format, int height = Height)
    {
        model.Culture = CultureInfo.InvariantCulture;
        model.DefaultFont = format == PlotFormat.Svg ? PlotFont.SvgFamilies : PlotFont.Usual();
        return format switch
        {
            PlotFormat.Svg => Svg(model, height),
            PlotFormat.Pdf => Pdf(model),
            _ => Png(model),
        };
    }

    private static PlotModel Model(IReadOnlyList<RunPicture> pictures, PlotKind kind) => kind switch
    {
        PlotKind.Settling => SettlingPlot.Build(pictures),
        PlotKind.Residuals => ResidualPlot.Build(pictures),
        PlotKind.String => StringPlot.Build(pictures),
        _ => DosePlot.Build(pictures),
    };

    private static byte[] Svg(PlotModel model, int height)
    {
        using var stream = new MemoryStream();
        var exporter = new OxyPlot.SvgExporter
        {
            Width = Width,
            Height = height,
            UseVerticalTextAlignmentWorkaround = true,
            TextMeasurer = new PixelMeasurer(Width, height),
        };
        exporter.Export(model, stream);
        return stream.ToArray();
    }

    private static byte[] Pdf(PlotModel model)
    {
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

        return stream.ToArray();
    }

    private static byte[] Png(PlotModel model)
    {
        using var bitmap = new SKBitmap((int)(Width * PngScale), (int)(Height * PngScale));
        using (var canvas = new SKCanvas(bitmap))
        {
            Draw(model, canvas, PngScale, RenderTarget.PixelGraphic);
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
