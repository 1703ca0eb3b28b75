using System.Text;

namespace Viscolog.Text;

/// <summary>Says the same with printable ASCII alone.</summary>
internal static class AsciiText
{
    public static string Of(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            plain.Append(c switch
            {
                >= ' ' and <= '~' or '\n' => c.ToString(),
                '·' => ".",
                '±' => "+/-",
                '°' => "deg ",
                '→' => "->",
                '–' or '—' => "-",
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
                '−' => "-",
                '²' => "2",
                _ => "?",
            });
        }

        return plain.ToString();
    }
}
