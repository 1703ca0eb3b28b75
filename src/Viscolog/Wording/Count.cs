namespace Viscolog.Wording;

/// <summary>Counts of things in words, given in the language spoken.</summary>
internal static class Count
{
    public static string Of(long count, string one, string many) => $"{count.ToString("N0", Spaced)} {(count == 1 ? one : many)}";
}
