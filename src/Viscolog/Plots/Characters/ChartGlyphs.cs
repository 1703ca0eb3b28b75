using Viscolog.Text;

namespace Viscolog.Plots.Characters;

/// <summary>The characters of a terminal chart. Each meaning has its own, so that colour is not needed.</summary>
internal sealed record ChartGlyphs
{
    /// <summary>A cell of a map where all values are in their bands.</summary>
    public const char InAllBands = '#';

    private const int LabelColumns = 9;

    /// <summary>Lines, marks and braille dots.</summary>
    public static ChartGlyphs Rich { get; } = new();

    /// <summary>Only characters from 0x20 to 0x7E.</summary>
    public static ChartGlyphs Plain { get; } = new()
    {
        IsPlain = true,
        Reading = 'o',
        Doubted = 'x',
        Settled = '#',
        Both = '@',
        Next = '>',
        NextBase = '{',
        LetDown = '<',
        OtherLimit = '|',
        Path = '-',
        Interval = '!',
        Target = '=',
        Limit = ':',
        Upright = '|',
        Tick = '+',
        Across = '-',
        AcrossTick = '+',
        Corner = '+',
        Median = "**",
        Band = "..",
        Thousands = ' ',
        Ellipsis = "...",
        Between = " - ",
    };

    public bool IsPlain { get; private init; }
    public char Reading { get; private init; } = '●';
    public char Doubted { get; private init; } = '⊗';
    public char Settled { get; private init; } = '◇';

    /// <summary>A settled value and a reading in the same cell.</summary>
    public char Both { get; private init; } = '◈';
    public char Next { get; private init; } = '▸';

    /// <summary>The next addition where it is base, which leads to a lower dose.</summary>
    public char NextBase { get; private init; } = '◂';

    /// <summary>Base that was added.</summary>
    public char LetDown { get; private init; } = '◁';

    /// <summary>The limit of a run where that of another is shaded.</summary>
    public char OtherLimit { get; private init; } = '┊';

    /// <summary>The arrow's shaft.</summary>
    public char Path { get; private init; } = '·';
    public char Interval { get; private init; } = '┆';
    public char Target { get; private init; } = '╌';
    public char Limit { get; private init; } = '░';
    public char Upright { get; private init; } = '│';
    public char Tick { get; private init; } = '┤';
    public char Across { get; private init; } = '─';
    public char AcrossTick { get; private init; } = '┬';
    public char Corner { get; private init; } = '└';
    public string Median { get; private init; } = "⠒⠒";
    public string Band { get; private init; } = "⠂⠂";
    public char Thousands { get; private init; } = PlainText.ThinSpace;
    public string Ellipsis { get; private init; } = "…";
    public string Between { get; private init; } = " · ";

    /// <summary>What stands for a meaning in the legend and, where it is one character, in the chart.</summary>
    public string Sign(Meaning meaning) => meaning switch
    {
        Meaning.BodyInBand => "=",
        Meaning.StringInBand => "|",
        Meaning.Contour => ".",
        Meaning.WayUp or Meaning.Settled or Meaning.PlanEnd => Settled.ToString(),
        Meaning.Doubted or Meaning.Signal => Doubted.ToString(),
        Meaning.Median => Median,
        Meaning.Band => Band,
        Meaning.Next => Next.ToString(),
        Meaning.LetDown => LetDown.ToString(),
        Meaning.Target or Meaning.Usual or Meaning.ControlLimit => Target.ToString(),
        Meaning.Limit => Limit.ToString(),
        Meaning.Mean or Meaning.Expected => Across.ToString(),
        Meaning.Wanted => Interval.ToString(),
        _ => Reading.ToString(),
    };

    /// <summary>The same of an element, where others of its meaning look different.</summary>
    public string Sign(Element element) => element switch
    {
        Element.Arrow { Meaning: Meaning.Next } arrow when arrow.To.X < arrow.From.X => NextBase.ToString(),
        Element.Limit { IsShaded: false } => OtherLimit.ToString(),
        _ => Sign(element.Meaning),
    };

    /// <summary>A mark of an axis or the value of a contour, by powers of ten where it would be too long for a label.</summary>
    public string Number(double value)
    {
        var text = PlotText.Tick(value).Replace(PlainText.ThinSpace, Thousands);
        return text.Length <= LabelColumns ? text : value.ToString("0.#E+0", Numbers);
    }

    /// <summary>A text as this set can show it; the plain one leaves the sign of degrees out, for which a chart has no room.</summary>
    public string Show(string text)
    {
        var clean = PlainText.Clean(text);
        return IsPlain ? AsciiText.Of(clean.Replace("°", "", StringComparison.Ordinal)) : clean;
    }
}
