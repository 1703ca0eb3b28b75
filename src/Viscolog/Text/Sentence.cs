namespace Viscolog.Text;

/// <summary>Makes a sentence of a remark that was written to stand after a colon.</summary>
internal static class Sentence
{
    public static string Of(string remark) => remark.Length == 0 ? remark : Capital(Ended(remark));

    /// <summary>The text with a capital at its start.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>The text with a stop at its end.</summary>
    public static string Ended(string text) => text.EndsWith('.') || text.EndsWith('!') || text.EndsWith('?') ? text : text + ".";
}
