using Viscolog.Core.Pots;

namespace Viscolog.RunFiles;

/// <summary>Watches that the standing time within a step never runs backwards.</summary>
internal sealed class StandingTime
{
    private TimeSpan? _last;

    /// <summary>The standing time that the entry contradicts; null where it fits. Entries that are void count for nothing.</summary>
    public TimeSpan? Contradicted(Entry entry)
    {
        if (!entry.Counts)
        {
            return null;
        }

        if (Steps.Begins(entry))
        {
            _last = null;
        }

        if (entry is not Entry.Measured { Reading.Wait: { } wait })
        {
            return null;
        }

        var before = _last;
        _last = wait;
        return wait < before ? before : null;
    }
}
