using Viscolog.Core.Curves;

namespace Viscolog.Core.Advising;

/// <summary>Whether advice could be given. The set of cases is closed.</summary>
public abstract record AdviceOutcome
{
    private protected AdviceOutcome()
    {
    }

    /// <summary>The advice given; null where it was refused.</summary>
    public Advice? Given => this switch
    {
        Advised advised => advised.Advice,
        AdvisedPair pair => pair.Advice,
        _ => null,
    };

    /// <summary>It could.</summary>
    /// <param name="Advice">The advice.</param>
    /// <param name="Belief">The belief it rests on.</param>
    public sealed record Advised(Advice Advice, Belief Belief) : AdviceOutcome;

    /// <summary>It could, for body and string together.</summary>
    /// <param name="Advice">The advice; its <see cref="Advice.Pair"/> is there.</param>
    /// <param name="Belief">The belief it rests on.</param>
    public sealed record AdvisedPair(Advice Advice, PairBelief Belief) : AdviceOutcome;

    /// <summary>It could not.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    public sealed record Refused(string Reason) : AdviceOutcome;
}
