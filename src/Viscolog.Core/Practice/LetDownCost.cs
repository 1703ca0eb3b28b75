using Viscolog.Core.Quantities;

namespace Viscolog.Core.Practice;

/// <summary>What it costs to save a pot that got too much: base, and a larger pot than was wanted.</summary>
/// <param name="Dose">The dose it got.</param>
/// <param name="Body">The body there.</param>
/// <param name="Base">Base that brings it back to the aim.</param>
/// <param name="Before">Everything in the pot before.</param>
/// <param name="After">Everything in the pot after.</param>
public sealed record LetDownCost(Dose Dose, Viscosity Body, Mass Base, Mass Before, Mass After)
{
    /// <summary>How many times the pot grows.</summary>
    public double Growth => After.Grams / Before.Grams;

    /// <summary>The cost at a dose of the pot as it was at first.</summary>
    internal static LetDownCost Of(PotTruth truth, Dose dose)
    {
        var thickener = Mass.FromGrams(truth.Base.Grams * dose.Percent / 100);
        var added = BaseFor(thickener, truth.Base, truth.Needed);
        var before = truth.Base + thickener;
        return new(dose, truth.BodyAt(dose), added, before, before + added);
    }

    /// <summary>Base that brings thickener in base down to a dose, by the mass balance; nothing where the dose is not above it.</summary>
    internal static Mass BaseFor(Mass thickener, Mass @base, Dose wanted)
        => Mass.FromGrams(wanted.Percent > 0 ? Math.Max(0, (100 * thickener.Grams / wanted.Percent) - @base.Grams) : 0);
}
