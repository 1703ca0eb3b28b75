using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Advising;

/// <summary>Says why an increment is as large as it is, in words for somebody new to statistics.</summary>
public static class Explanation
{
    /// <summary>Doses with a reading below which the slope is not trusted far.</summary>
    private const int FewDoses = 3;

    internal static string Of(Choice choice, Posterior posterior, Percentage risk, DoseLimit limit)
    {
        var bound = choice.Bound switch
        {
            ChoiceBound.BestChance => "This dose has the best chance of landing in band; more would be likelier to go past it.",
            ChoiceBound.Risk => FormattableString.Invariant($"Stopping short keeps the chance of over within {risk.Percent:0.##} % ({OneIn(risk)})."),
            ChoiceBound.StepCap => Capped(choice, posterior),
            ChoiceBound.Limit => $"The step ends at the dose limit: {limit.Why}.",
            _ => throw new ArgumentOutOfRangeException(nameof(choice), choice.Bound, "not a bound"),
        };
        var doses = posterior.Evidence.Steps.Where(s => s.Readings.Length > 0).Select(s => s.Dose).Distinct().Count();
        return Known(doses, posterior) + bound + Doubt(posterior);
    }

    /// <summary>A chance as a person says it.</summary>
    public static string OneIn(Percentage chance) => chance.Fraction switch
    {
        <= 0.0001 => "less than 1 in 10000",
        >= 0.95 => "almost certain",
        >= 0.5 => FormattableString.Invariant($"{10 * chance.Fraction:0} in 10"),
        _ => FormattableString.Invariant($"1 in {TwoDigits(1 / chance.Fraction)}"),
    };

    private static string Capped(Choice choice, Posterior posterior)
    {
        var ordinary = posterior.Evidence.Steps[^1].Dose + (IncrementPolicy.StepCap * posterior.Evidence.RangeTop);
        return choice.DosePercent > ordinary + 1e-9
            ? FormattableString.Invariant($"No single step goes beyond the doses that earlier runs have read, nor beyond {100 * IncrementPolicy.KnownStepCap:0} % of the usual range.")
            : FormattableString.Invariant($"No single step goes beyond {100 * IncrementPolicy.StepCap:0} % of the usual range, however far the target.");
    }

    private static double TwoDigits(double value)
    {
        var grain = Math.Pow(10, Math.Max(0, Math.Floor(Math.Log10(value)) - 1));
        return Math.Round(value / grain) * grain;
    }

    private static string Known(int doses, Posterior posterior)
    {
        var history = posterior.Prior.Runs switch
        {
            0 => "",
            1 => "One earlier run of this base and thickener helps. ",
            var runs => FormattableString.Invariant($"{runs} earlier runs of this base and thickener help. "),
        };
        if (doses >= FewDoses || posterior.Prior.Runs > 0)
        {
            return history;
        }

        return doses == 1
            ? "One dose read says nothing of the slope yet: what is usual for thickeners decides. "
            : FormattableString.Invariant($"{Spelled(doses)} doses read are too few to trust the slope far beyond them; what is usual for thickeners decides there. ");
    }

    private static string Doubt(Posterior posterior)
    {
        var best = posterior.ShapeWeights.Max();
        return best > 0.6 || posterior.Evidence.Steps.Length < FewDoses
            ? ""
            : " Several shapes of curve still fit the readings.";
    }

    private static string Spelled(int number) => number == 2 ? "Two" : number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
