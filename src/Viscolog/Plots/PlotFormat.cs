namespace Viscolog.Plots;

/// <summary>The file formats of a picture.</summary>
internal enum PlotFormat
{
    Svg,
    Pdf,
    Png,
}
