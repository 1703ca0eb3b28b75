using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>The way to the end in outline: how much of each thickener is still to come, this addition included.</summary>
internal static class PairPlans
{
    /// <summary>Makes it, the thickener of this addition first.</summary>
    public static ImmutableArray<PlannedDose> Of(PairPolicy policy, PairSituation at, PairChoice choice, double after)
    {
        var roles = at.Posterior.Evidence.Roles;
        var body = Planned(roles.BodyThickener.Name, at.BodyNow, choice.IsString ? policy.BodyEnd : Math.Max(policy.BodyEnd, after), choice.IsString ? null : after);
        var strings = Planned(roles.StringThickener.Name, at.StringNow, choice.IsString ? Math.Max(policy.StringEnd, after) : policy.StringEnd, choice.IsString ? after : null);
        PlannedDose?[] inOrder = choice.IsString ? [strings, body] : [body, strings];
        return [.. inOrder.OfType<PlannedDose>()];
    }

    /// <summary>Each addition after the first covers about as much as the one before it left; a rule of thumb for the outline.</summary>
    private static PlannedDose? Planned(string thickener, double now, double end, double? first)
    {
        var left = end - now;
        if (left < 0.005)
        {
            return null;
        }

        var step = Math.Max(first is { } after ? after - now : left / 2, left / 6);
        return new(thickener, Dose.FromPercent(left), (int)Math.Clamp(Math.Ceiling((left / step) - 0.05), 1, 9));
    }
}
