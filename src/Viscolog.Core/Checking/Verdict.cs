namespace Viscolog.Core.Checking;

/// <summary>What the decision rule says of a batch. The set of cases is closed.</summary>
public abstract record Verdict
{
    private protected Verdict()
    {
    }

    /// <summary>It meets its specification.</summary>
    public sealed record Accept : Verdict;

    /// <summary>It does not.</summary>
    /// <param name="Why">In what.</param>
    public sealed record Reject(string Why) : Verdict;

    /// <summary>It can't be told yet.</summary>
    /// <param name="MoreReadings">Further readings that would decide if their mean stays where it is; null where none would.</param>
    /// <param name="Why">Why not.</param>
    public sealed record Undecided(int? MoreReadings, string Why) : Verdict;
}
