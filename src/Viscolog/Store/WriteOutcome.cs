namespace Viscolog.Store;

/// <summary>What came of adding to a log. The set of cases is closed.</summary>
internal abstract record WriteOutcome
{
    private WriteOutcome(string? trouble) => Trouble = trouble;

    /// <summary>Why it is not acknowledged; null where it is.</summary>
    public string? Trouble { get; }

    /// <summary>What to say where a run is another bench's.</summary>
    public static string Handed(int run)
        => FormattableString.Invariant(
            $"run {run} was handed to another bench, which alone adds to it; 'viscolog share runs' says where it is");

    /// <summary>It is on the disk, in the journal and in the query copy: acknowledged.</summary>
    internal sealed record Saved() : WriteOutcome((string?)null);

    /// <summary>It is on the disk, in the journal; the query copy lacks it and is made anew when the log is opened again.</summary>
    /// <param name="Reason">In words.</param>
    internal sealed record SavedOnly(string Reason) : WriteOutcome(Reason);

    /// <summary>It is not in the log, which is as it was.</summary>
    /// <param name="Reason">In words.</param>
    internal sealed record NotSaved(string Reason) : WriteOutcome(Reason);

    /// <summary>A file says something else than the log does; nothing was added.</summary>
    /// <param name="Reason">Where, and what to do.</param>
    internal sealed record Contradicted(string Reason) : WriteOutcome(Reason);
}
