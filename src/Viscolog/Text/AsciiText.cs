using System.Globalization;
using System.Text;

namespace Viscolog.Text;

/// <summary>Says the same with printable ASCII alone; letters lose their accents.</summary>
internal static class AsciiText
{
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

    /// <summary>A letter without its accents; a mark of its own over another letter is left out.</summary>
    private static string Bare(Rune rune)
        => Rune.GetUnicodeCategory(rune) == UnicodeCategory.NonSpacingMark ? ""
            : rune.ToString().Normalize(NormalizationForm.FormD)[0] is >= ' ' and <= '~' and var bare ? bare.ToString() : "?";
}
