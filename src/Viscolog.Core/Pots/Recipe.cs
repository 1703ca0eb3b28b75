using System.Collections.Immutable;
using Viscolog.Core.Quantities;

namespace Viscolog.Core.Pots;

/// <summary>
/// What a pot is made of, free of its size: doses of thickeners and water, over base. A run's samples and let-downs are in it by their
/// effect on the doses: doses carry over to another size, grams poured do not.
/// </summary>
public sealed record Recipe
{
    /// <summary>
    /// Density that a thickener counts with where none is stated, in g/mL (most are sold as dispersions in water; no source).
    /// </summary>
    public static readonly Density AssumedThickener = Density.FromGramsPerMilliliter(1);

    private Recipe(PotBase @base, Percentage water, ImmutableArray<RecipePart> parts) => (Base, WaterOnBase, Parts) = (@base, water, parts);

    /// <summary>The base.</summary>
    public PotBase Base { get; }

    /// <summary>Water poured on its own, in g for 100 g of base.</summary>
    public Percentage WaterOnBase { get; }

    /// <summary>The thickeners, in the order in which they first went in.</summary>
    public ImmutableArray<RecipePart> Parts { get; private init; }

    /// <summary>Everything, in g for 1 g of base.</summary>
    private double OverBase => 1 + WaterOnBase.Fraction + Parts.Sum(p => p.Dose.Percent / 100 / p.Thickener.Dilution.ThickenerFraction);

    /// <summary>The recipe of what is in a run's pot now.</summary>
    /// <param name="run">The run.</param>
    /// <exception cref="ArgumentException">An entry does not fit the run (see <see cref="Run.After"/>).</exception>
    public static Recipe Of(Run run)
    {
        var pot = run.PotNow();
        RecipePart[] parts =
        [
            .. run.Entries.OfType<Entry.Dosed>().Where(d => d.Counts).Select(d => run.NameNow(d.Thickener)).Distinct(StringComparer.Ordinal)
                .Select(name => new RecipePart(run.FindThickener(name)!, pot.DoseOf(name))),
        ];
        var cutting = parts
            .Sum(p => pot.In(p.Thickener.Name).Grams * p.Thickener.Dilution.WaterParts / p.Thickener.Dilution.ThickenerParts);
        return new(run.Base, Percentage.FromFraction(Math.Max(0, pot.Water.Grams - cutting) / pot.Base.Grams), [.. parts]);
    }

    /// <summary>The same recipe with another dose of one thickener.</summary>
    /// <param name="thickener">Its name.</param>
    /// <param name="dose">The dose.</param>
    public Recipe With(string thickener, Dose dose)
        => this with { Parts = [.. Parts.Select(p => p.Thickener.Name == thickener ? p with { Dose = dose } : p)] };

    /// <summary>The amounts for a batch of a size.</summary>
    /// <param name="total">Everything in it, thickeners and water included; above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is 0.</exception>
    public RecipeAmounts For(Mass total) => OnBase(Mass.FromGrams(Guard.Positive(total.Grams, nameof(total)) / OverBase));

    /// <summary>The amounts that go with so much base.</summary>
    /// <param name="mass">The base.</param>
    public RecipeAmounts OnBase(Mass mass) => new(
        mass,
        Mass.FromGrams(mass.Grams * WaterOnBase.Fraction),
        [.. Parts.Select(p => Amount(p, mass.Grams * p.Dose.Percent / 100))]);

    /// <summary>The volume of a batch, volumes taken to add up; null where the base's density is not known.</summary>
    /// <param name="total">Everything in it.</param>
    public Volume? VolumeOf(Mass total) => PerGram() is { } perGram ? Volume.FromMilliliters(total.Grams * perGram) : null;

    /// <summary>The mass of a batch, volumes taken to add up; null where the base's density is not known.</summary>
    /// <param name="volume">The volume of all of it.</param>
    public Mass? MassOf(Volume volume) => PerGram() is { } perGram ? Mass.FromGrams(volume.Milliliters / perGram) : null;

    /// <summary>The volume of what is poured of a thickener, volumes taken to add up; null where its density is not stated.</summary>
    /// <param name="thickener">The thickener with its dilution.</param>
    /// <param name="poured">Thickener and its water together.</param>
    public static Volume? VolumeOf(Thickener thickener, Mass poured)
    {
        var neat = thickener.Dilution.ThickenerFraction;
        return thickener.Density is { } density
            ? Volume.FromMilliliters(poured.Grams * ((neat / density.GramsPerMilliliter) + ((1 - neat) / Density.Water.GramsPerMilliliter)))
            : null;
    }

    private static PartAmount Amount(RecipePart part, double neat)
        => new(part, Mass.FromGrams(neat),
            Mass.FromGrams(neat * part.Thickener.Dilution.WaterParts / part.Thickener.Dilution.ThickenerParts));

    /// <summary>mL of all for 1 g of all.</summary>
    private double? PerGram()
    {
        if (Base.Density is not { } density)
        {
            return null;
        }

        var volume = (1 / density.GramsPerMilliliter) + (WaterOnBase.Fraction / Density.Water.GramsPerMilliliter);
        foreach (var (thickener, dose) in Parts)
        {
            var cut = thickener.Dilution.WaterParts / thickener.Dilution.ThickenerParts;
            volume += dose.Percent / 100
                * ((1 / (thickener.Density ?? AssumedThickener).GramsPerMilliliter) + (cut / Density.Water.GramsPerMilliliter));
        }

        return volume / OverBase;
    }
}

/// <summary>What a batch is made of.</summary>
/// <param name="Base">Base.</param>
/// <param name="Water">Water on its own, without that of cut thickeners.</param>
/// <param name="Parts">The thickeners, in the order in which they go in.</param>
public sealed record RecipeAmounts(Mass Base, Mass Water, ImmutableArray<PartAmount> Parts)
{
    /// <summary>All of it.</summary>
    public Mass Total => Mass.FromGrams(Base.Grams + Water.Grams + Parts.Sum(p => p.Poured.Grams));
}

/// <summary>One thickener of a recipe.</summary>
/// <param name="Thickener">The thickener, with the dilution that it is poured in.</param>
/// <param name="Dose">Thickener as supplied, over base.</param>
public sealed record RecipePart(Thickener Thickener, Dose Dose);

/// <summary>How much of one thickener a batch takes.</summary>
/// <param name="Part">The thickener and its dose.</param>
/// <param name="Neat">Thickener as supplied.</param>
/// <param name="Water">The water that it is cut with.</param>
public sealed record PartAmount(RecipePart Part, Mass Neat, Mass Water)
{
    /// <summary>Thickener and its water together.</summary>
    public Mass Poured => Neat + Water;
}
