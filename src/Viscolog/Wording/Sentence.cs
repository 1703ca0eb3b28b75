namespace Viscolog.Wording;

/// <summary>Makes a sentence of a remark that was written to stand after a colon.</summary>
internal static class Sentence
{
    public static string Of(string remark)
        => remark.Length == 0 ? remark : char.ToUpperInvariant(remark[0]) + remark[1..] + (remark[^1] is '.' or '!' or '?' ? "" : ".");
}
