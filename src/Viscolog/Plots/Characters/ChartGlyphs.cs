using System.Globalization;
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
        Meaning.Target or Meaning.Usual or Meaning.ControlLimit => Target.ToString(),
        Meaning.Limit => Limit.ToString(),
        Meaning.Mean or Meaning.Expected => Across.ToString(),
        Meaning.Wanted => Interval.ToString(),
        _ => Reading.ToString(),
    };

    /// <summary>A number, by powers of ten where it would be too long for a label.</summary>
    public string Number(double value)
    {
        var text = value < 0 ? "-" + PlotText.Number(-value, Thousands) : PlotText.Number(value, Thousands);
        return text.Length <= LabelColumns ? text : value.ToString("0.#E+0", CultureInfo.InvariantCulture);
    }

    /// <summary>A mark of one's own for each of several runs or steps.</summary>
    public static char Letter(int place, char first = 'a') => (char)((place < 26 ? first : 'A') + (place % 26));

    /// <summary>A text as this set can show it; the plain one leaves the sign of degrees out, for which a chart has no room.</summary>
    public string Show(string text)
    {
        var clean = PlainText.Clean(text);
        return IsPlain ? AsciiText.Of(clean.Replace("°", "", StringComparison.Ordinal)) : clean;
    }
}
