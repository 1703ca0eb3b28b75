using Viscolog.Feeds;
using Viscolog.Sharing;
using Viscolog.Store;

namespace Viscolog.Tui.Pattern;

/// <summary>What every screen needs.</summary>
/// <param name="Log">The open log.</param>
/// <param name="Clock">The time.</param>
/// <param name="Shades">The colours.</param>
/// <param name="IsAscii">Whether only printable ASCII may be drawn.</param>
/// <param name="IsPractice">Whether the log is the practice log.</param>
internal sealed record TuiContext(BenchLog Log, TimeProvider Clock, Shades Shades, bool IsAscii, bool IsPractice = false)
{
    /// <summary>Has what was handed to the screen from another thread looked at soon.</summary>
    public Action Wake { get; init; } = () => { };

    /// <summary>
    /// What time alone may change: asked while nothing else happens, so that nothing needs to be drawn until one says so.
    /// </summary>
    public ISet<Func<bool>> Watched { get; init; } = new HashSet<Func<bool>>();

    /// <summary>The instruments that are listened to; null for none.</summary>
    public FeedDesk? Desk { get; init; }

    /// <summary>What shares the log with other benches; null where it is not shared.</summary>
    public SharePost? Post { get; init; }

    /// <summary>Whether readings that have come to rest are logged by themselves.</summary>
    public bool TakesReadings { get; init; }

    public DateTimeOffset Now => Clock.GetLocalNow();

    public DateOnly Today => DateOnly.FromDateTime(Now.DateTime);

    /// <summary>What became of something that was to be logged.</summary>
    public static string Words(WriteOutcome outcome, string what) => outcome switch
    {
        WriteOutcome.Saved => Say($"saved: {what}"),
        WriteOutcome.SavedOnly only => only.Reason,
        _ => Say($"not saved: {outcome.Trouble}"),
    };
}
