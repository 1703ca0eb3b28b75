using System.Globalization;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Checking;

/// <summary>Goes from what was found to a verdict: reject where one thing fails, accept where all pass.</summary>
internal sealed class Verdicts(BatchCheck check, BatchReadings readings)
{
    /// <summary>Readings missing from those that a verdict needs; 0 where none is.</summary>
    public int Missing => check.Body is null
        ? 0 : Math.Max(0, check.Specification.MinimumReadingsInForce - (check.Body.Value?.Readings ?? 0));

    /// <summary>Decides.</summary>
    public Verdict Decide()
    {
        if (readings.Falls)
        {
            return new Verdict.Undecided(null, "the readings of the pot fall over time, which is not settling");
        }

        if (readings.MoreWait is not null)
        {
            return new Verdict.Undecided(null, "no reading has settled yet");
        }

        if (Missing > 0)
        {
            return new Verdict.Undecided(Missing,
                string.Create(CultureInfo.InvariantCulture, $"a verdict needs {check.Specification.MinimumReadingsInForce} readings of "
                    + $"the settled pot, {check.Body!.Value?.Readings ?? 0} {(check.Body.Value?.Readings == 1 ? "is" : "are")} there"));
        }

        return Failing() is { } why ? new Verdict.Reject(why) : (Verdict?)(Unread() ?? Doubted()) ?? new Verdict.Accept();
    }

    private static bool Fails(Percentage? chance) => chance <= DecisionRule.RejectUpTo;

    private static bool Passes(Percentage? chance) => chance >= DecisionRule.AcceptFrom;

    private string? Failing()
    {
        string?[] failing =
        [
            Fails(check.Body?.Chance) ? $"the body is {(check.Body!.IsBelowAim ? "short" : "over")}" : null,
            Fails(check.Acidity?.Chance) ? $"the pH is too {(check.Acidity!.IsTooLow ? "low" : "high")}" : null,
            Fails(check.StringLength?.Chance)
                ? $"the string is too {(check.StringLength!.Mean < check.StringLength.Band.Low ? "short" : "long")}" : null,
        ];
        return failing.All(f => f is null) ? null : string.Join(", ", failing.OfType<string>());
    }

    private Verdict.Undecided? Unread()
        => check.Acidity is { Mean: null } ? new(1, "the specification asks for a pH, and none was read of the pot as it is now")
            : check.StringLength is { Mean: null } ? new(1, "the specification asks for a string length, and none was read of the pot as "
                + "it is now")
            : null;

    private Verdict.Undecided? Doubted()
    {
        if (check.Body is { Value: { } value } body && !Passes(body.Chance))
        {
            var more = Conformity.MoreReadings(more => value.After(more).Chance(body.Band));
            return new(more, "the value lies too near a limit for its uncertainty");
        }

        return check.Acidity is { } acidity && !Passes(acidity.Chance) ? new(null, "the pH lies too near a limit for what a bench meter "
            + "can tell")
            : check.StringLength is { Mean: not null } strings
                && !Passes(strings.Chance) ? new(strings.MoreReadings(), "the string length lies too near a limit for its uncertainty")
            : null;
    }
}

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

/// <summary>When a batch is accepted and when it is rejected: by the probability of conformity (JCGM 106:2012), with 5 % for either
/// mistake.</summary>
public static class DecisionRule
{
    /// <summary>From this probability of conformity on a batch is accepted.</summary>
    public static Percentage AcceptFrom { get; } = Percentage.FromPercent(95);

    /// <summary>Up to this one it is rejected.</summary>
    public static Percentage RejectUpTo { get; } = Percentage.FromPercent(5);

    /// <summary>In words.</summary>
    public static string Words { get; } = string.Create(CultureInfo.InvariantCulture,
        $"accept from {AcceptFrom.Percent:0} % probability of conformity, reject up to {RejectUpTo.Percent:0} %, else undecided (JCGM "
            + $"106:2012)");
}
