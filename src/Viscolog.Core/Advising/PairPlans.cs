using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>The way to the end in outline: how much of each thickener is still to come, this addition included.</summary>
internal static class PairPlans
{
    /// <summary>Makes it.</summary>
    public static (PlannedDose? Body, PlannedDose? String) Of(PairPolicy policy, PairSituation at, PairChoice choice, double after)
    {
        var body = Planned(at.BodyNow, choice.IsString ? policy.BodyEnd : Math.Max(policy.BodyEnd, after), choice.IsString ? null : after);
        var strings = Planned(at.StringNow, choice.IsString ? Math.Max(policy.StringEnd, after) : policy.StringEnd, choice.IsString ? after : null);
        return (body, strings);
    }

    /// <summary>Each addition after the first covers about as much as the one before it left; a rule of thumb for the outline.</summary>
    private static PlannedDose? Planned(double now, double end, double? first)
    {
        var left = end - now;
        if (left < 0.005)
        {
            return null;
        }

        var step = Math.Max(first is { } after ? after - now : left / 2, left / 6);
        return new(Dose.FromPercent(left), (int)Math.Clamp(Math.Ceiling((left / step) - 0.05), 1, 9));
    }
}
