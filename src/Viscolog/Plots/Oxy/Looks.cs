using OxyPlot;

namespace Viscolog.Plots.Oxy;

/// <summary>Colours, shapes and dashes. Each meaning has a shape or dash as well as a colour.</summary>
internal static class Looks
{
    public const double TextSize = 12;

    /// <summary>Colours that stay apart for colour-blind readers (Okabe and Ito, Color Universal Design, 2008), darkest first.</summary>
    private static readonly OxyColor[] Colors =
    [
        OxyColor.FromRgb(0x00, 0x72, 0xB2), OxyColor.FromRgb(0xD5, 0x5E, 0x00), OxyColor.FromRgb(0x00, 0x9E, 0x73),
        OxyColor.FromRgb(0x00, 0x00, 0x00), OxyColor.FromRgb(0xCC, 0x79, 0xA7), OxyColor.FromRgb(0xE6, 0x9F, 0x00),
        OxyColor.FromRgb(0x56, 0xB4, 0xE9),
    ];

    private static readonly MarkerType[] Shapes =
        [MarkerType.Circle, MarkerType.Square, MarkerType.Triangle, MarkerType.Diamond, MarkerType.Custom, MarkerType.Custom];

    private static readonly LineStyle[] Dashes =
        [LineStyle.Solid, LineStyle.LongDash, LineStyle.Dot, LineStyle.DashDot, LineStyle.Dash, LineStyle.LongDashDotDot];

    /// <summary>A triangle on its point.</summary>
    private static readonly ScreenPoint[] Wedge = [new(-1.1, -1), new(1.1, -1), new(0, 1.1)];

    /// <summary>A broad cross.</summary>
    private static readonly ScreenPoint[] Cross =
    [
        new(-0.4, -1.1), new(0.4, -1.1), new(0.4, -0.4), new(1.1, -0.4), new(1.1, 0.4), new(0.4, 0.4),
        new(0.4, 1.1), new(-0.4, 1.1), new(-0.4, 0.4), new(-1.1, 0.4), new(-1.1, -0.4), new(-0.4, -0.4),
    ];

    public static OxyColor Ink => OxyColor.FromRgb(0x20, 0x20, 0x20);

    public static OxyColor Next => Colors[1];

    public static OxyColor NextText => OxyColor.FromRgb(0x9C, 0x45, 0x00);

    public static OxyColor Target => OxyColor.FromRgb(0x00, 0x6B, 0x4E);

    public static OxyColor Limit => OxyColor.FromRgb(0x60, 0x60, 0x60);

    public static OxyColor Grid => OxyColor.FromRgb(0xE4, 0xE4, 0xE4);

    private static OxyColor Curve => Colors[0];

    private static OxyColor Purple => OxyColor.FromRgb(0x8E, 0x3B, 0x6B);

    /// <summary>The colour of a run or step; ink for the only one.</summary>
    public static OxyColor Color(int? place) => place is { } i ? Colors[i % Colors.Length] : Ink;

    /// <summary>The outline where the shape is a custom one, else null.</summary>
    public static ScreenPoint[]? Outline(int shape) => (shape % Shapes.Length) switch { 4 => Wedge, 5 => Cross, _ => null };

    public static MarkerType Shape(int shape) => Shapes[shape % Shapes.Length];

    /// <summary>How a line looks.</summary>
    public static Pen Pen(Meaning meaning, int? of) => meaning switch
    {
        Meaning.Median => of is { } i ? new(Color(of), Dashes[i % Dashes.Length], 2) : new(Curve, LineStyle.Solid, 2),
        Meaning.Way => new(Color(of), LineStyle.Solid, 2),
        Meaning.SettledLevel => new(Color(of), LineStyle.Dash, 1.2),
        Meaning.Expected => new(Ink, LineStyle.Solid, 1.4),
        Meaning.Usual => new(Ink, LineStyle.Dash, 1.2),
        Meaning.Path => new(Ink, LineStyle.Solid, 2),
        Meaning.Next => new(of is null ? Next : Color(of), LineStyle.Solid, 3),
        Meaning.LetDown => new(of is null ? Purple : Color(of), LineStyle.Solid, 2),
        Meaning.Target => of is { } i ? new(Color(of), Dashes[i % Dashes.Length], 1.6) : new(Target, LineStyle.Solid, 1.6),
        Meaning.Limit when of is { } i => new(Color(of), Dashes[i % Dashes.Length], 1.8),
        Meaning.PlanWay => new(Next, LineStyle.Dot, 1.6),
        Meaning.Mean => new(Curve, LineStyle.Solid, 1.4),
        Meaning.ControlLimit => new(Next, LineStyle.Dash, 1.6),
        Meaning.Wanted => new(Target, LineStyle.DashDot, 1.6),
        Meaning.Zone => new(Grid, LineStyle.Solid, 1),
        Meaning.ToCome => new(Next, LineStyle.Dot, 1.4),
        Meaning.BodyInBand => new(Target, LineStyle.Solid, 2.2),
        Meaning.StringInBand => new(Purple, LineStyle.Dash, 2.2),
        Meaning.Contour or Meaning.Boundary => new(Limit, LineStyle.Dot, 1),
        _ => new(Limit, LineStyle.Solid, 1),
    };

    /// <summary>How a region between two edges looks.</summary>
    /// <param name="meaning">What it stands for.</param>
    /// <param name="of">Its run.</param>
    /// <param name="runs">How many runs there are: the more, the fainter.</param>
    public static (OxyColor Fill, LineStyle Edges) Region(Meaning meaning, int? of, int runs) => meaning switch
    {
        Meaning.ReadingBand => (OxyColor.FromAColor(0x24, Curve), LineStyle.Dash),
        Meaning.Found => (OxyColor.FromAColor(0x50, Curve), LineStyle.None),
        _ when of is not null => (OxyColor.FromAColor((byte)(runs > 3 ? 0x16 : 0x28), Color(of)), LineStyle.None),
        _ => (OxyColor.FromAColor(0x60, Curve), LineStyle.None),
    };

    /// <summary>How a mark looks.</summary>
    public static Face Face(Meaning meaning, int? of) => meaning switch
    {
        Meaning.Settled => new(of ?? 3, OxyColors.White, Color(of)) { Size = 7.5 },
        Meaning.Doubted => new(of ?? 0, OxyColors.White, Color(of)),
        Meaning.WayUp => new(2, Next, OxyColors.White),
        Meaning.Signal => new(1, OxyColors.White, Next) { EdgeWidth = 2.2 },
        Meaning.WentOver => new(5, Next, OxyColors.White),
        Meaning.Elsewhere => new(1, OxyColors.White, Limit),
        Meaning.PlanEnd => new(3, OxyColors.White, Next),
        _ => new(of ?? 0, Color(of), OxyColors.White),
    };

    /// <summary>The colour of words.</summary>
    public static OxyColor Text(Meaning meaning) => meaning switch { Meaning.WentOver => NextText, Meaning.Boundary => Limit, _ => Ink };
}

/// <summary>How a line looks.</summary>
internal sealed record Pen(OxyColor Color, LineStyle Dash, double Width);

/// <summary>How a mark looks.</summary>
/// <param name="Shape">The place in the order of shapes.</param>
/// <param name="Fill">Inside.</param>
/// <param name="Edge">Outline.</param>
internal sealed record Face(int Shape, OxyColor Fill, OxyColor Edge)
{
    public const double UsualSize = 5;

    public double Size { get; init; } = UsualSize;

    public double EdgeWidth { get; init; } = Edge == OxyColors.White ? 0.8 : 1.4;
}
