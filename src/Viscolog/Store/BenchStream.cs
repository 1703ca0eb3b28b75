using System.Globalization;

namespace Viscolog.Store;

/// <summary>A bench's record as other benches see it.</summary>
/// <param name="Log">The UUID of the bench's log.</param>
/// <param name="Life">From 1; a log that was put back from a backup and then went on otherwise has begun another.</param>
internal sealed record BenchStream(Guid Log, int Life)
{
    /// <summary>A name for a folder.</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"{Log:D}-{Life}");

    /// <summary>The stream of a name; null where it is none.</summary>
    public static BenchStream? Read(string text)
        => text.LastIndexOf('-') is > 0 and var mark && Guid.TryParseExact(text[..mark], "D", out var log)
            && int.TryParse(text.AsSpan()[(mark + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var life) && life > 0
            ? new(log, life)
            : null;
}
