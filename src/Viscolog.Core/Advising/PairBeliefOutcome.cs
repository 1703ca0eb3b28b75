using Viscolog.Core.Curves;

namespace Viscolog.Core.Advising;

/// <summary>Whether a run with two thickeners can be believed anything of. The set of cases is closed.</summary>
public abstract record PairBeliefOutcome
{
    private protected PairBeliefOutcome()
    {
    }

    /// <summary>It can.</summary>
    /// <param name="Belief">The belief.</param>
    public sealed record Believed(PairBelief Belief) : PairBeliefOutcome;

    /// <summary>It can't.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Refused(string Reason) : PairBeliefOutcome;
}
