namespace Viscolog.Store;

/// <summary>What came of bringing a run file in. The set of cases is closed.</summary>
internal abstract record ImportOutcome
{
    private ImportOutcome()
    {
    }

    /// <summary>All of it is in the log and acknowledged.</summary>
    /// <param name="Plan">What was added, and what was there already.</param>
    internal sealed record Imported(MergePlan Plan) : ImportOutcome;

    /// <summary>It says something else than the log does; nothing was added.</summary>
    /// <param name="Reason">Where, and what to do.</param>
    internal sealed record Contradicted(string Reason) : ImportOutcome;

    /// <summary>A fault came in between.</summary>
    /// <param name="Reason">What was saved and what was not.</param>
    internal sealed record NotAcknowledged(string Reason) : ImportOutcome;
}
