using System.Globalization;
using System.Text;
using Viscolog.Text;

namespace Viscolog.Plots;

/// <summary>The characters of a terminal chart. Each meaning has its own, so that colour is not needed.</summary>
internal sealed record ChartGlyphs
{
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

    /// <summary>A text as this set can show it: control characters gone; in the plain set accents dropped and the rest as question marks.</summary>
    public string Show(string text)
    {
        var clean = PlainText.Clean(text);
        if (!IsPlain)
        {
            return clean;
        }

        var result = new StringBuilder(clean.Length);
        foreach (var rune in clean.Normalize(NormalizationForm.FormD).EnumerateRunes())
        {
            if (Rune.GetUnicodeCategory(rune) is not UnicodeCategory.NonSpacingMark)
            {
                result.Append(Fallback(rune));
            }
        }

        return result.ToString();
    }

    private static string Fallback(Rune rune) => rune.Value switch
    {
        >= 0x20 and <= 0x7E => rune.ToString(),
        '·' => ".",
        '°' => "",
        '–' or '—' or '−' => "-",
        '…' => "...",
        '‘' or '’' => "'",
        '“' or '”' => "\"",
        PlainText.ThinSpace or '\u00A0' or '\u202F' => " ",
        _ => "?",
    };
}
