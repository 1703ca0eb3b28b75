using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>When a batch is accepted and when it is rejected: by the probability of conformity (JCGM 106:2012), with 5 % for either mistake.</summary>
public static class DecisionRule
{
    /// <summary>From this probability of conformity on a batch is accepted.</summary>
    public static Percentage AcceptFrom { get; } = Percentage.FromPercent(95);

    /// <summary>Up to this one it is rejected.</summary>
    public static Percentage RejectUpTo { get; } = Percentage.FromPercent(5);

    /// <summary>In words.</summary>
    public static string Words { get; } = FormattableString.Invariant(
        $"accept from {AcceptFrom.Percent:0} % probability of conformity, reject up to {RejectUpTo.Percent:0} %, else undecided (JCGM 106:2012)");
}
