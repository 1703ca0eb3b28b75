using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>What a program holds while it has a log: the lock beside it, and the journal's own.</summary>
/// <param name="Lock">The lock; null for a reader of a folder that can't be written and has none.</param>
/// <param name="Claim">The journal's own; null where there is no journal yet.</param>
internal sealed record LogHold(LogLock? Lock, JournalClaim? Claim) : IDisposable
{
    /// <summary>Takes a log alone, to replace its files.</summary>
    /// <exception cref="LogRefused">Another program has it.</exception>
    public static LogHold Alone(LogPlace place)
    {
        var holder = LogLock.HolderOf(place);
        var taken = LogLock.Take(place, isShared: false, LogPatience.Short) ?? throw new LogRefused(LogLock.BusyWords(place));
        try
        {
            return File.Exists(place.Journal)
                ? new(taken, JournalClaim.Take(place.Disk, place.Journal, isShared: false, LogPatience.Short.Time)
                    ?? throw new LogRefused(LogLock.BusyWords(place, holder)))
                : new(taken, null);
        }
        catch
        {
            taken.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Claim?.Dispose();
        Lock?.Dispose();
    }
}
