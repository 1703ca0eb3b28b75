using CsCheck;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Laws;

/// <summary>A pot taken to another size, as laws.</summary>
public sealed class RecipeLaws
{
    private static readonly Gen<double> Grams = Gen.Double[0.01, 20];
    private static readonly Gen<double> Size = Gen.Double[1, 1e6];

    private static readonly Thickener Neat = new("N") { Density = Density.FromGramsPerMilliliter(1.05) };
    private static readonly Thickener Cut = new("C") { Dilution = new(1, 3) };

    private static Gen<Run> Runs { get; } = Gen.Select(Grams.Array[1, 4], Grams.Array[0, 4], Gen.Double[0, 10], Gen.Double[0.5, 2])
        .Select((neat, cut, water, density) =>
        new Run(new("B", Density.FromGramsPerMilliliter(density)), Mass.FromGrams(100))
        {
            Thickeners = [Cut, Neat],
            Entries =
            [
                .. neat.Select(g => new Entry.Dosed("N", Mass.FromGrams(g))),
                .. cut.Select(g => new Entry.Dosed("C", Mass.FromGrams(g))),
                new Entry.Watered(Mass.FromGrams(water)),
            ],
        });

    [Fact]
    public void The_parts_of_a_batch_add_up_to_its_size()
        => Gen.Select(Runs, Size).Sample((run, size) =>
        {
            var amounts = Recipe.Of(run).For(Mass.FromGrams(size));
            Near(size, amounts.Total.Grams);
            Near(size, amounts.Base.Grams + amounts.Water.Grams + amounts.Parts.Sum(p => p.Neat.Grams + p.Water.Grams));
        });

    [Fact]
    public void A_batch_as_large_as_the_pot_is_the_pot()
        => Runs.Sample(run =>
        {
            var pot = run.PotNow();
            var amounts = Recipe.Of(run).For(pot.Total);
            Near(pot.Base.Grams, amounts.Base.Grams);
            Assert.All(amounts.Parts, p => Near(pot.In(p.Part.Thickener.Name).Grams, p.Neat.Grams));
            Near(pot.Water.Grams, amounts.Water.Grams + amounts.Parts.Sum(p => p.Water.Grams));
        });

    [Fact]
    public void Every_part_is_linear_in_the_size()
        => Gen.Select(Runs, Size, Gen.Double[0.1, 50]).Sample((run, size, factor) =>
        {
            var recipe = Recipe.Of(run);
            var (one, many) = (recipe.For(Mass.FromGrams(size)), recipe.For(Mass.FromGrams(factor * size)));
            Near(factor * one.Base.Grams, many.Base.Grams);
            Near(factor * one.Water.Grams, many.Water.Grams);
            Assert.All(one.Parts.Zip(many.Parts), pair => Near(factor * pair.First.Poured.Grams, pair.Second.Poured.Grams));
            Near(factor * recipe.VolumeOf(one.Total)!.Value.Milliliters, recipe.VolumeOf(many.Total)!.Value.Milliliters);
        });

    [Fact]
    public void Samples_and_thinning_carry_over_by_the_dose_alone()
        => Gen.Select(Runs, Size, Gen.Double[0.01, 0.9], Grams).Sample((run, size, part, let) =>
        {
            var total = run.PotNow().Total.Grams;
            var sampled = run with { Entries = run.Entries.Add(new Entry.TakenOut(Mass.FromGrams(part * total))) };
            var (before, after) = (Recipe.Of(run).For(Mass.FromGrams(size)), Recipe.Of(sampled).For(Mass.FromGrams(size)));
            Near(before.Base.Grams, after.Base.Grams);
            Assert.All(before.Parts.Zip(after.Parts), pair => Near(pair.First.Neat.Grams, pair.Second.Neat.Grams));

            var thinned = run with { Entries = run.Entries.Add(new Entry.LetDown(Mass.FromGrams(let))) };
            Assert.All(Recipe.Of(thinned).Parts, p => Near(thinned.PotNow().DoseOf(p.Thickener.Name).Percent, p.Dose.Percent));
        });

    [Fact]
    public void Volume_and_mass_of_a_batch_undo_each_other()
        => Gen.Select(Runs, Size).Sample((run, size) =>
        {
            var recipe = Recipe.Of(run);
            Near(size, recipe.VolumeOf(recipe.MassOf(Volume.FromMilliliters(size))!.Value)!.Value.Milliliters);
        });

    [Fact]
    public void Volumes_add_up()
    {
        // 100 g of base at 1.25 g/mL is 80 mL, 5 g of thickener at 1.05 g/mL is 4.7619 mL: by hand.
        var run = new Run(new("B", Density.FromGramsPerMilliliter(1.25)), Mass.FromGrams(100))
        {
            Thickeners = [Neat],
            Entries = [new Entry.Dosed("N", Mass.FromGrams(5))],
        };
        Assert.Equal(84.7619, Recipe.Of(run).VolumeOf(Mass.FromGrams(105))!.Value.Milliliters, 4);
        Assert.Null(Recipe.Of(run with { Base = new("B") }).VolumeOf(Mass.FromGrams(105)));
    }

    [Fact]
    public void An_entry_that_is_void_is_no_part_of_the_recipe()
    {
        var run = new Run(new("B"), Mass.FromGrams(100))
        {
            Thickeners = [Neat, Cut],
            Entries = [new Entry.Dosed("C", Mass.FromGrams(5)) { VoidReason = "wrong pot" }, new Entry.Dosed("N", Mass.FromGrams(2))],
        };
        Assert.Equal("N", Assert.Single(Recipe.Of(run).Parts).Thickener.Name);
    }

    [Theory]
    [InlineData(8, 625)]
    [InlineData(16, 312.5)]
    public void Colour_concentrate_goes_by_its_yield(double volumes, double milliliters)
        => Assert.Equal(milliliters, new ColourYield(volumes).For(Volume.FromMilliliters(5000)).Milliliters, 9);

    private static void Near(double expected, double actual) => Assert.True(
        Math.Abs(expected - actual) <= 1e-12 * Math.Max(1, Math.Abs(expected)),
        FormattableString.Invariant($"{expected:R} against {actual:R}"));
}
