namespace Viscolog.Feeds;

/// <summary>
/// Which readings of a stream are kept: what is stable when it has become so, else at intervals that grow with the time the pot has stood,
/// as its build-up slows down with it.
/// </summary>
/// <param name="least">The shortest interval.</param>
internal sealed class Series(TimeSpan least)
{
    /// <summary>The next interval is this part of the time since the step began.</summary>
    private const double Part = 0.1;

    private DateTimeOffset? _kept;
    private bool? _wasStable;

    /// <summary>Whether a reading is kept; it then counts as the last.</summary>
    /// <param name="at">When it came.</param>
    /// <param name="isStable">Whether the instrument calls it stable; null where it does not say.</param>
    /// <param name="stood">How long the pot has stood; null where that is not known.</param>
    public bool Keeps(DateTimeOffset at, bool? isStable, TimeSpan? stood)
    {
        var hasSettled = isStable == true && _wasStable != true;
        _wasStable = isStable;
        if (isStable == false)
        {
            return false;
        }

        var interval = stood * Part is { } grown && grown > least ? grown : least;
        // A reading that came to rest anew is one that was taken anew, but no faster than the shortest interval.
        if (_kept is { } last && at - last < (hasSettled ? least : interval))
        {
            return false;
        }

        _kept = at;
        return true;
    }

    /// <summary>The step is a new one.</summary>
    public void Begin() => (_kept, _wasStable) = (null, null);
}
