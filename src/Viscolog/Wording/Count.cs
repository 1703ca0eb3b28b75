using System.Globalization;

namespace Viscolog.Wording;

/// <summary>Counts of things in words.</summary>
internal static class Count
{
    private static readonly NumberFormatInfo Spaced = new() { NumberGroupSeparator = "\u2009" };

    public static string Of(long count, string one, string many) => $"{count.ToString("N0", Spaced)} {(count == 1 ? one : many)}";
}
