using OxyPlot;

namespace Viscolog.Plots;

/// <summary>Colours, shapes and dashes. Each meaning has a shape or dash as well as a colour.</summary>
internal static class PlotStyle
{
    public const double TextSize = 12;
    public const double MarkerSize = 5;

    /// <summary>Colours that stay apart for colour-blind readers (Okabe and Ito, Color Universal Design, 2008), darkest first.</summary>
    private static readonly OxyColor[] Colors =
    [
        OxyColor.FromRgb(0x00, 0x72, 0xB2), OxyColor.FromRgb(0xD5, 0x5E, 0x00), OxyColor.FromRgb(0x00, 0x9E, 0x73),
        OxyColor.FromRgb(0x00, 0x00, 0x00), OxyColor.FromRgb(0xCC, 0x79, 0xA7), OxyColor.FromRgb(0xE6, 0x9F, 0x00),
        OxyColor.FromRgb(0x56, 0xB4, 0xE9),
    ];

    private static readonly MarkerType[] Shapes =
        [MarkerType.Circle, MarkerType.Square, MarkerType.Triangle, MarkerType.Diamond, MarkerType.Custom, MarkerType.Custom];

    private static readonly LineStyle[] Lines =
        [LineStyle.Solid, LineStyle.LongDash, LineStyle.Dot, LineStyle.DashDot, LineStyle.Dash, LineStyle.LongDashDotDot];

    /// <summary>A triangle on its point.</summary>
    private static readonly ScreenPoint[] Wedge = [new(-1.1, -1), new(1.1, -1), new(0, 1.1)];

    /// <summary>A broad cross.</summary>
    private static readonly ScreenPoint[] Cross =
    [
        new(-0.4, -1.1), new(0.4, -1.1), new(0.4, -0.4), new(1.1, -0.4), new(1.1, 0.4), new(0.4, 0.4),
        new(0.4, 1.1), new(-0.4, 1.1), new(-0.4, 0.4), new(-1.1, 0.4), new(-1.1, -0.4), new(-0.4, -0.4),
    ];

    public static OxyColor Curve => Colors[0];

    public static OxyColor Ink => OxyColor.FromRgb(0x20, 0x20, 0x20);

    public static OxyColor Next => Colors[1];

    public static OxyColor Target => OxyColor.FromRgb(0x00, 0x6B, 0x4E);

    public static OxyColor Limit => OxyColor.FromRgb(0x60, 0x60, 0x60);

    public static OxyColor Grid => OxyColor.FromRgb(0xE4, 0xE4, 0xE4);

    public static OxyColor ColorOf(int i) => Colors[i % Colors.Length];

    public static MarkerType ShapeOf(int i) => Shapes[i % Shapes.Length];

    /// <summary>The outline where the shape is a custom one, else null.</summary>
    public static ScreenPoint[]? OutlineOf(int i) => (i % Shapes.Length) switch { 4 => Wedge, 5 => Cross, _ => null };

    public static LineStyle LineOf(int i) => Lines[i % Lines.Length];
}
