using System.Security.Cryptography;
using System.Text;

namespace Viscolog.Store;

/// <summary>Texts as keys of LiteDB's indexes, which take no more than 1023 bytes.</summary>
internal static class IndexKey
{
    private const int Longest = 250;

    /// <summary>The text itself, or its beginning and its SHA-256 where it is long.</summary>
    public static string Of(string text)
        => text.Length <= Longest ? text : $"{text[..100]}\u001f{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}";
}
