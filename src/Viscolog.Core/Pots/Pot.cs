using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>
/// What is in one vessel now. A mass balance: nothing reacts or evaporates, and a sample takes everything out in proportion.
/// </summary>
/// <remarks>
/// Dose x = 100·m(thickener)/m(base) and share = 100·m(thickener)/m(total); the definitions are this project's (see docs/science.md).
/// </remarks>
public sealed record Pot
{
    private Pot(Mass @base, Mass water, ImmutableDictionary<string, Mass> thickeners)
        => (Base, Water, Thickeners) = (@base, water, thickeners);

    /// <summary>Base in the pot.</summary>
    public Mass Base { get; }

    /// <summary>Water added on top of the base, that of pre-diluted thickener included.</summary>
    public Mass Water { get; }

    /// <summary>Everything in the pot.</summary>
    public Mass Total => Mass.FromGrams(Base.Grams + Water.Grams + Thickeners.Values.Sum(m => m.Grams));

    private ImmutableDictionary<string, Mass> Thickeners { get; }

    /// <summary>A pot that holds base alone.</summary>
    /// <param name="mass">Above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass is 0.</exception>
    public static Pot With(Mass mass)
    {
        Guard.Positive(mass.Grams, nameof(mass));
        return new(mass, Mass.None, ImmutableDictionary.Create<string, Mass>(StringComparer.Ordinal));
    }

    /// <summary>The thickener, as supplied, in the pot.</summary>
    public Mass In(string thickener) => Thickeners.GetValueOrDefault(thickener);

    /// <summary>Grams of the thickener, as supplied, for 100 g of base, both now in the pot.</summary>
    public Dose DoseOf(string thickener) => Dose.FromPercent(100 * In(thickener).Grams / Base.Grams);

    /// <summary>The same thickener as a percentage of everything in the pot.</summary>
    public Percentage ShareOf(string thickener) => Percentage.FromPercent(100 * In(thickener).Grams / Total.Grams);

    /// <summary>The pot after pouring in a thickener, cut with water as its dilution says.</summary>
    /// <param name="thickener">What is poured.</param>
    /// <param name="poured">Thickener and its dilution water together.</param>
    public Pot Add(Thickener thickener, Mass poured)
    {
        var part = Mass.FromGrams(poured.Grams * thickener.Dilution.ThickenerFraction);
        var water = Mass.FromGrams(Math.Max(0, poured.Grams - part.Grams));
        return new(Base, Water + water, Thickeners.SetItem(thickener.Name, In(thickener.Name) + part));
    }

    /// <summary>The pot after base was added: every dose falls.</summary>
    public Pot LetDown(Mass added) => new(Base + added, Water, Thickeners);

    /// <summary>The pot after water was added: doses stay, shares fall.</summary>
    public Pot AddWater(Mass added) => new(Base, Water + added, Thickeners);

    /// <summary>The pot after a sample was taken: doses and shares stay.</summary>
    /// <param name="sample">Less than the pot holds.</param>
    /// <exception cref="ArgumentOutOfRangeException">The sample is not less than the pot holds.</exception>
    public Pot TakeOut(Mass sample)
    {
        var total = Total.Grams;
        if (sample.Grams >= total)
        {
            throw new ArgumentOutOfRangeException(nameof(sample), sample.Grams, "must be less than the pot holds");
        }

        var kept = 1 - (sample.Grams / total);
        Mass Keep(Mass mass) => Mass.FromGrams(mass.Grams * kept);
        return new(Keep(Base), Keep(Water), Thickeners.ToImmutableDictionary(t => t.Key, t => Keep(t.Value), StringComparer.Ordinal));
    }

    /// <summary>
    /// Thickener, as supplied, that brings its dose up to <paramref name="wanted"/>; nothing where the dose is not below it.
    /// </summary>
    public Mass ThickenerToReach(string thickener, Dose wanted)
        => Mass.FromGrams(Math.Max(0, (wanted.Percent * Base.Grams / 100) - In(thickener).Grams));
}
