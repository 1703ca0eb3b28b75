namespace Viscolog.Core.Checking;

/// <summary>Whether a batch could be checked. The set of cases is closed.</summary>
public abstract record CheckOutcome
{
    private protected CheckOutcome()
    {
    }

    /// <summary>It could.</summary>
    /// <param name="Check">The result.</param>
    public sealed record Checked(BatchCheck Check) : CheckOutcome;

    /// <summary>It could not.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Refused(string Reason) : CheckOutcome;
}
