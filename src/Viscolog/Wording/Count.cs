using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>Counts of things in words.</summary>
internal static class Count
{
    public static string Of(long count, string one, string many) => $"{count.ToString("N0", PlainText.Spaced)} {(count == 1 ? one : many)}";
}
