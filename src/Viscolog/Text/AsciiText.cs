using System.Globalization;
using System.Text;

namespace Viscolog.Text;

/// <summary>Says the same with printable ASCII alone; letters lose their accents, German ones are spelt
/// out.</summary>
internal static class AsciiText
{
    /// <summary>Letters of Latin-1 and Latin Extended-A with what they are without their accents (The Unicode Standard, canonical
    /// decompositions; the stroked ones by likeness).</summary>
    private static readonly (string Letters, char Bare)[] Accented =
    [
        ("ÀÁÂÃÅĀĂĄ", 'A'),
        ("ÇĆĈĊČ", 'C'),
        ("ĎĐ", 'D'),
        ("ÈÉÊËĒĔĖĘĚ", 'E'),
        ("ĜĞĠĢ", 'G'),
        ("Ĥ", 'H'),
        ("ÌÍÎÏĨĪĬĮİ", 'I'),
        ("Ĵ", 'J'),
        ("Ķ", 'K'),
        ("ĹĻĽŁ", 'L'),
        ("ÑŃŅŇ", 'N'),
        ("ÒÓÔÕŌŎŐØ", 'O'),
        ("ŔŖŘ", 'R'),
        ("ŚŜŞŠ", 'S'),
        ("ŢŤ", 'T'),
        ("ÙÚÛŨŪŬŮŰŲ", 'U'),
        ("Ŵ", 'W'),
        ("ÝŶŸ", 'Y'),
        ("ŹŻŽ", 'Z'),
        ("àáâãåāăą", 'a'),
        ("çćĉċč", 'c'),
        ("ďđ", 'd'),
        ("èéêëēĕėęě", 'e'),
        ("ĝğġģ", 'g'),
        ("ĥ", 'h'),
        ("ìíîïĩīĭį", 'i'),
        ("ĵ", 'j'),
        ("ķ", 'k'),
        ("ĺļľł", 'l'),
        ("ñńņň", 'n'),
        ("òóôõōŏőø", 'o'),
        ("ŕŗř", 'r'),
        ("śŝşš", 's'),
        ("ţť", 't'),
        ("ùúûũūŭůűų", 'u'),
        ("ŵ", 'w'),
        ("ýÿŷ", 'y'),
        ("źżž", 'z'),
    ];

    public static string Of(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            plain.Append(rune.Value switch
            {
                >= ' ' and <= '~' or '\n' => rune.ToString(),
                '·' => ".",
                '±' => "+/-",
                '°' => "deg ",
                '→' => "->",
                '–' or '—' or '−' => "-",
                '‘' or '’' => "'",
                '“' or '”' => "\"",
                '\u2009' or '\u202f' or '\u00a0' => " ",
                '≥' => ">=",
                '≤' => "<=",
                '…' => "...",
                '„' or '‟' => "\"",
                '‚' => "'",
                'ä' => "ae",
                'ö' => "oe",
                'ü' => "ue",
                'Ä' => "Ae",
                'Ö' => "Oe",
                'Ü' => "Ue",
                'ß' => "ss",
                'η' => "eta",
                'τ' => "tau",
                'γ' => "rate",
                'λ' => "time",
                '√' => "sqrt ",
                '∞' => "inf",
                '²' => "2",
                _ => Bare(rune),
            });
        }

        return plain.ToString();
    }

    /// <summary>
    /// A letter without its accents; a mark of its own over another letter is left out. The letters stand here, since without the tables of
    /// the system's cultures .NET does not take them apart.
    /// </summary>
    private static string Bare(Rune rune)
        => Rune.GetUnicodeCategory(rune) == UnicodeCategory.NonSpacingMark ? ""
            : Array.Find(Accented, a => a.Letters.Contains(rune.ToString(), StringComparison.Ordinal)) is { Bare: not '\0' and var bare }
            ? bare.ToString() : "?";
}
