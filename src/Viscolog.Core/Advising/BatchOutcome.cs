namespace Viscolog.Core.Advising;

/// <summary>Whether a batch could be planned. The set of cases is closed.</summary>
public abstract record BatchOutcome
{
    private protected BatchOutcome()
    {
    }

    /// <summary>It could.</summary>
    /// <param name="Plan">The plan.</param>
    public sealed record Planned(BatchPlan Plan) : BatchOutcome;

    /// <summary>It could not.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Refused(string Reason) : BatchOutcome;
}
