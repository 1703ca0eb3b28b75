namespace Viscolog.Feeds;

/// <summary>
/// Which readings of a stream are kept: what is stable when it has become so, else at intervals that grow with the time the pot has stood,
/// as its build-up slows down with it.
/// </summary>
/// <param name="Least">The shortest interval.</param>
internal sealed record Series(TimeSpan Least)
{
    /// <summary>The next interval is this part of the time since the step began.</summary>
    private const double Part = 0.1;

    /// <summary>When the last one that is kept came; null before.</summary>
    private DateTimeOffset? Kept { get; init; }

    private bool? WasStable { get; init; }

    /// <summary>The series with a reading, and whether that one is kept.</summary>
    /// <param name="at">When it came.</param>
    /// <param name="isStable">Whether the instrument calls it stable; null where it does not say.</param>
    /// <param name="stood">How long the pot has stood; null where that is not known.</param>
    public (Series After, bool Keeps) With(DateTimeOffset at, bool? isStable, TimeSpan? stood)
    {
        var hasSettled = isStable == true && WasStable != true;
        var interval = stood * Part is { } grown && grown > Least ? grown : Least;
        // A reading that came to rest anew is one that was taken anew, but no faster than the shortest interval.
        var keeps = isStable != false && !(Kept is { } last && at - last < (hasSettled ? Least : interval));
        return (this with { WasStable = isStable, Kept = keeps ? at : Kept }, keeps);
    }
}
