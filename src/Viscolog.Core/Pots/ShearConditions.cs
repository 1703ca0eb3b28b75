using System.Collections.Immutable;
using Viscolog.Core.Measuring;

namespace Viscolog.Core.Pots;

/// <summary>Under which shear conditions a run was read.</summary>
public static class ShearConditions
{
    /// <summary>Every condition of the readings that count, in the order in which they first stand in the run.</summary>
    public static ImmutableArray<ShearCondition> Of(Run run) =>
    [
        .. run.Entries.OfType<Entry.Measured>()
            .Where(m => m.Counts && m.Reading.Value is not null)
            .Select(m => ShearCondition.Of(run.MethodInForce, m.Reading.Value!))
            .Distinct(),
    ];

    /// <summary>
    /// Whether all readings of both runs were taken under one condition, so that they may stand for one curve. Torques with another factor
    /// were read with another spindle.
    /// </summary>
    public static bool Agree(Run one, Run other)
    {
        var all = Of(one).Union(Of(other)).ToArray();
        return all.Length < 2
            && (all is not [{ RevolutionsPerMinute: not null }] || one.Setup.PerPercentTorque == other.Setup.PerPercentTorque);
    }
}
