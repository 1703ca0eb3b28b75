namespace Viscolog.Core.Curves;

/// <summary>Whether a run's readings can carry the curves of two thickeners. The set of cases is closed.</summary>
public abstract record PairEvidenceOutcome
{
    private protected PairEvidenceOutcome()
    {
    }

    /// <summary>They can.</summary>
    /// <param name="Evidence">What they say.</param>
    public sealed record Usable(PairEvidence Evidence) : PairEvidenceOutcome;

    /// <summary>They can't.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Unusable(string Reason) : PairEvidenceOutcome;
}
