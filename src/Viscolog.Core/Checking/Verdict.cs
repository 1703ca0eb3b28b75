using System.Collections.Immutable;
using Viscolog.Core.Quantities;

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
    /// <param name="Defects">In what; one or more.</param>
    public sealed record Reject(ImmutableArray<Defect> Defects) : Verdict;

    /// <summary>It can't be told yet.</summary>
    /// <param name="MoreReadings">Further readings that would decide if their mean stays where it is; null where none would.</param>
    /// <param name="Why">Why not.</param>
    public sealed record Undecided(int? MoreReadings, Doubt Why) : Verdict;
}

/// <summary>In what a batch fails.</summary>
public enum Defect
{
    /// <summary>The body is below the band.</summary>
    BodyShort,

    /// <summary>The body is above the band.</summary>
    BodyOver,

    /// <summary>The pH is below the band.</summary>
    PhLow,

    /// <summary>The pH is above the band.</summary>
    PhHigh,

    /// <summary>The string is below the band.</summary>
    StringShort,

    /// <summary>The string is above the band.</summary>
    StringLong,
}

/// <summary>When a batch is accepted and when it is rejected: by the probability of conformity (JCGM 106:2012), with 5 % for either
/// mistake.</summary>
public static class DecisionRule
{
    /// <summary>From this probability of conformity on a batch is accepted.</summary>
    public static Percentage AcceptFrom { get; } = Percentage.FromPercent(95);

    /// <summary>Up to this one it is rejected.</summary>
    public static Percentage RejectUpTo { get; } = Percentage.FromPercent(5);
}
