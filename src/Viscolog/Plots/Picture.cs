using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Plots;

/// <summary>What a chart shows, before anything is drawn. Files and characters are two renderings of it.</summary>
/// <param name="Title">The name of what is shown; null for none.</param>
/// <param name="Subtitle">What a reader of a file has to know of it; null for none.</param>
/// <param name="Panels">At least one; those that share an axis stand below or beside one another.</param>
internal sealed record Picture(string? Title, string? Subtitle, ImmutableArray<Panel> Panels)
{
    /// <summary>What the chart cannot show, for a chart in characters, which has no subtitle.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];
}

/// <summary>Two axes and what stands between them.</summary>
/// <param name="Across">From left to right.</param>
/// <param name="Up">From the bottom to the top.</param>
/// <param name="Elements">From the back to the front.</param>
internal sealed record Panel(Axis Across, Axis Up, ImmutableArray<Element> Elements)
{
    /// <summary>What stands in the middle of an empty panel; null where there is something to show.</summary>
    public string? Nothing { get; init; }
}

/// <summary>A place in a panel, in the units of its axes.</summary>
internal sealed record Spot(double X, double Y)
{
    /// <summary>A body over its dose.</summary>
    public static Spot Of(Dose dose, Viscosity body) => new(dose.Percent, body.MilliPascalSeconds);
}

/// <summary>A range of values at one place.</summary>
internal sealed record Span(double X, double Low, double High)
{
    /// <summary>The interval of a body at a place across.</summary>
    public static Span Of(double x, Estimate body) => new(x, body.Low.MilliPascalSeconds, body.High.MilliPascalSeconds);
}

/// <summary>A line of the legend.</summary>
/// <param name="Full">In a file; null for none.</param>
/// <param name="Short">In characters; null for none.</param>
/// <param name="Roomy">What follows in a wide chart in characters.</param>
internal sealed record LegendLine(string? Full, string? Short = null, string? Roomy = null);

/// <summary>What an element stands for; each renderer has one look for each. Legends in characters keep this order.</summary>
internal enum Meaning
{
    BodyInBand,
    StringInBand,

    /// <summary>One of several runs.</summary>
    Run,
    Reading,

    /// <summary>Readings of a rising shear rate.</summary>
    WayUp,

    /// <summary>Readings at another dose of the other thickener.</summary>
    Elsewhere,
    Settled,
    Doubted,
    Signal,
    WentOver,

    /// <summary>The middle of what is known of a curve.</summary>
    Median,

    /// <summary>The band of <see cref="Median"/>.</summary>
    Band,

    /// <summary>Where a single reading may lie.</summary>
    ReadingBand,

    /// <summary>The interval of the value that a verdict rests on.</summary>
    Found,

    /// <summary>How a value nears the settled one.</summary>
    Way,
    SettledLevel,
    Expected,

    /// <summary>Where nearly all scatter ends.</summary>
    Usual,

    /// <summary>From one place to the next.</summary>
    Path,
    Next,

    /// <summary>Base that was added.</summary>
    LetDown,
    PlanEnd,
    PlanWay,
    Target,
    Limit,
    Mean,
    ControlLimit,
    Wanted,

    /// <summary>One and two standard deviations from the mean.</summary>
    Zone,

    /// <summary>Where one part of the places ends and another begins.</summary>
    Boundary,

    /// <summary>Ties marks together for the eye.</summary>
    Link,

    /// <summary>What the settling has yet to bring.</summary>
    ToCome,

    /// <summary>Where the body is the same.</summary>
    Contour,
}

/// <summary>Something in a panel.</summary>
/// <param name="Meaning">What it stands for.</param>
/// <param name="Of">The place of its run or step where there are several; null for the only one.</param>
internal abstract record Element(Meaning Meaning, int? Of)
{
    /// <summary>Its line in the legend; null for none.</summary>
    public LegendLine? Key { get; init; }

    /// <summary>A line through places in rising order of x.</summary>
    internal sealed record Line(Meaning Meaning, int? Of, ImmutableArray<Spot> Points) : Element(Meaning, Of);

    /// <summary>The region between two edges.</summary>
    internal sealed record Area(Meaning Meaning, int? Of, ImmutableArray<Span> Spans) : Element(Meaning, Of);

    /// <summary>Upright bars.</summary>
    internal sealed record Bars(Meaning Meaning, int? Of, ImmutableArray<Span> Spans) : Element(Meaning, Of);

    /// <summary>Marks; without places a line of the legend alone.</summary>
    internal sealed record Marks(Meaning Meaning, int? Of, ImmutableArray<Spot> Points) : Element(Meaning, Of);

    /// <summary>A level line through the whole panel. Of several the first lies on top in characters.</summary>
    internal sealed record Level(Meaning Meaning, double Y) : Element(Meaning, Of: null);

    /// <summary>The band aimed at.</summary>
    /// <param name="Of">The first run that aims at it, where runs aim at several; null for the only one.</param>
    /// <param name="Low">Its lower edge.</param>
    /// <param name="High">Its upper edge.</param>
    /// <param name="Text">What stands beside it in a file; null for nothing.</param>
    internal sealed record Target(int? Of, double Low, double High, string? Text) : Element(Meaning.Target, Of)
    {
        /// <summary>What follows the text, on a line of its own where there is little room; null for nothing.</summary>
        public string? Value { get; init; }

        /// <summary>The words on its upper edge in characters; null for none.</summary>
        public string? Word { get; init; }

        /// <summary>The band of a body.</summary>
        public static Target Around(ViscosityBand band, string? text, int? of = null)
            => new(of, band.Low.MilliPascalSeconds, band.High.MilliPascalSeconds, text);
    }

    /// <summary>A dose beyond which there is something wrong.</summary>
    /// <param name="Of">The first run whose limit it is, where it is not all of them; null where it is.</param>
    /// <param name="From">Where it begins.</param>
    /// <param name="Text">The reason as a file says it; null for none.</param>
    /// <param name="Word">The reason as characters say it; null for none.</param>
    internal sealed record Limit(int? Of, double From, string? Text, string? Word) : Element(Meaning.Limit, Of)
    {
        /// <summary>Whether all beyond it is shaded; else it is a line.</summary>
        public bool IsShaded { get; init; } = true;
    }

    /// <summary>An addition of thickener or base, from before to after.</summary>
    /// <param name="Meaning">Whether it is advised or was made.</param>
    /// <param name="Of">Its run; null for the only one.</param>
    /// <param name="From">Where the pot was.</param>
    /// <param name="To">Where it came to, or is expected to be.</param>
    /// <param name="Interval">With its interval; null for none.</param>
    /// <param name="Lines">What stands beside it in a file.</param>
    internal sealed record Arrow(Meaning Meaning, int? Of, Spot From, Spot To, Span? Interval, ImmutableArray<string> Lines)
        : Element(Meaning, Of);

    /// <summary>Words at a place, for files.</summary>
    /// <param name="Meaning">What they speak of.</param>
    /// <param name="At">The place.</param>
    /// <param name="Text">The words.</param>
    /// <param name="Side">-1 above left of it, 0 above or, where there is no room, right, 1 below.</param>
    internal sealed record Words(Meaning Meaning, Spot At, string Text, int Side) : Element(Meaning, Of: null);

    /// <summary>Names of traces at their right ends; <see cref="Element.Of"/> counts them from 0.</summary>
    internal sealed record Ends(ImmutableArray<(Spot At, string Text)> Traces) : Element(Meaning.Settled, Of: null);

    /// <summary>Lines of equal value with their numbers.</summary>
    internal sealed record Contours(Field Field, ImmutableArray<double> Levels) : Element(Meaning.Contour, Of: null);

    /// <summary>Where a value lies in its band.</summary>
    internal sealed record InBand(Meaning Meaning, Field Field, double Low, double High) : Element(Meaning, Of: null)
    {
        public bool Holds(double x, double y) => Field.At(x, y) is var value && value >= Low && value <= High;
    }

    /// <summary>One of several runs: a line of the legend alone.</summary>
    /// <param name="Place">Its place among them.</param>
    /// <param name="Look">What stands before its name in a file.</param>
    internal sealed record RunKey(int Place, KeyLook Look) : Element(Meaning.Run, Place);
}

/// <summary>What stands for a run in the legend of a file.</summary>
internal enum KeyLook
{
    Nothing,
    Mark,
    LineAndMark,
}

/// <summary>A value, above 0, over two doses.</summary>
/// <param name="Across">Evenly spaced from 0.</param>
/// <param name="Up">Likewise.</param>
/// <param name="Values">Row by row, a row for each of <paramref name="Up"/>.</param>
internal sealed record Field(ImmutableArray<double> Across, ImmutableArray<double> Up, ImmutableArray<double> Values)
{
    /// <summary>The logarithm at places of the grid.</summary>
    public double Ln(int column, int row) => Math.Log(Values[(row * Across.Length) + column]);

    /// <summary>Where a level crosses the grid's lines: from the foot to the top, then from left to right.</summary>
    public IEnumerable<Spot> Crossings(double level)
    {
        var ln = Math.Log(level);
        for (var row = 1; row < Up.Length; row++)
        {
            for (var i = 1; i < Across.Length; i++)
            {
                if ((Ln(i - 1, row) < ln) != (Ln(i, row) < ln))
                {
                    var part = (ln - Ln(i - 1, row)) / (Ln(i, row) - Ln(i - 1, row));
                    yield return new(Across[i - 1] + (part * (Across[i] - Across[i - 1])), Up[row]);
                }
            }
        }

        for (var column = 1; column < Across.Length; column++)
        {
            for (var j = 1; j < Up.Length; j++)
            {
                if ((Ln(column, j - 1) < ln) != (Ln(column, j) < ln))
                {
                    var part = (ln - Ln(column, j - 1)) / (Ln(column, j) - Ln(column, j - 1));
                    yield return new(Across[column], Up[j - 1] + (part * (Up[j] - Up[j - 1])));
                }
            }
        }
    }

    /// <summary>The value anywhere inside, straight in its logarithm between the places of the grid.</summary>
    public double At(double x, double y)
    {
        var (columns, rows) = (Across.Length - 1, Up.Length - 1);
        var (column, row) = (Math.Clamp(x / Across[^1] * columns, 0, columns), Math.Clamp(y / Up[^1] * rows, 0, rows));
        var (i, j) = (Math.Min((int)column, columns - 1), Math.Min((int)row, rows - 1));
        var (u, v) = (column - i, row - j);
        var below = ((1 - u) * (1 - v) * Ln(i, j)) + (u * (1 - v) * Ln(i + 1, j));
        return Math.Exp(below + ((1 - u) * v * Ln(i, j + 1)) + (u * v * Ln(i + 1, j + 1)));
    }
}
