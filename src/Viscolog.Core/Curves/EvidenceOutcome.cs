namespace Viscolog.Core.Curves;

/// <summary>Whether a run's readings can carry a curve. The set of cases is closed.</summary>
public abstract record EvidenceOutcome
{
    private protected EvidenceOutcome()
    {
    }

    /// <summary>They can.</summary>
    /// <param name="Evidence">What they say.</param>
    public sealed record Usable(Evidence Evidence) : EvidenceOutcome;

    /// <summary>They can't.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Unusable(string Reason) : EvidenceOutcome;
}
