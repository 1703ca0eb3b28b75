using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Says why an addition of two thickeners is the one it is.</summary>
internal static class PairExplanation
{
    public static string Of(PairChoice choice, PairSituation at, PairPolicy policy, Percentage risk)
    {
        var roles = at.Posterior.Evidence.Roles;
        var (this_, other) = choice.IsString ? (roles.StringThickener, roles.BodyThickener) : (roles.BodyThickener, roles.StringThickener);
        var stillToCome = choice.IsString ? policy.BodyEnd - at.BodyNow : policy.StringEnd - at.StringNow;
        var bound = choice.Bound switch
        {
            PairBound.BestChance => "This dose has the best chance of ending with body and string both in band.",
            PairBound.BodyRisk => FormattableString.Invariant($"Stopping short keeps the chance of over, in body or string, within {risk.Percent:0.##} % ({Explanation.OneIn(risk)}); the body is the nearer of the two."),
            PairBound.StringRisk => FormattableString.Invariant($"Stopping short keeps the chance of over, in body or string, within {risk.Percent:0.##} % ({Explanation.OneIn(risk)}); the string is the nearer of the two."),
            PairBound.Room => $"Stopping short leaves room for the {other.Name} still to come, which moves {(choice.IsString ? "the string" : "the body")} too.",
            PairBound.StepCap => FormattableString.Invariant($"No single step goes beyond {100 * IncrementPolicy.StepCap:0} % of the usual range, however far the target."),
            PairBound.Limit => $"The step ends at the dose limit of {this_.Name}.",
            _ => throw new ArgumentOutOfRangeException(nameof(choice), choice.Bound, "not a bound"),
        };
        var order = choice.IsString ? "String first: what it needs thickens too, so that the body is finished last." : "";
        return choice.IsString && stillToCome > 0.05 && choice.Bound != PairBound.BestChance ? $"{order} {bound}" : bound;
    }
}
