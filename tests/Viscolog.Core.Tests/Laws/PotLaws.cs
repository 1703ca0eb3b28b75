using CsCheck;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Core.Quantities;
using Xunit;

namespace Viscolog.Core.Tests.Laws;

/// <summary>The mass balance as laws.</summary>
public sealed class PotLaws
{
    private static readonly Gen<double> Grams = Gen.Double[0.01, 50];
    private static readonly Thickener Cut = new("C") { Dilution = new(1, 3) };
    private static readonly Thickener Neat = new("N");

    [Fact]
    public void The_order_of_additions_does_not_matter_to_the_dose()
        => Gen.Select(Grams.Array[2, 8], Gen.Int[0, 1000]).Sample((grams, seed) =>
        {
            var pot = Pot.With(Mass.FromGrams(100));
            Pot Pour(Pot into, double g) => into.Add(g < 25 ? Neat : Cut, Mass.FromGrams(g));
            var shuffled = grams.ToArray();
            new Random(seed).Shuffle(shuffled);
            var (one, other) = (grams.Aggregate(pot, Pour), shuffled.Aggregate(pot, Pour));
            Near(one.DoseOf("N").Percent, other.DoseOf("N").Percent);
            Near(one.DoseOf("C").Percent, other.DoseOf("C").Percent);
            Near(one.Total.Grams, other.Total.Grams);
        });

    [Fact]
    public void Taking_a_sample_leaves_dose_and_share()
        => Gen.Select(Grams, Grams, Gen.Double[0.001, 0.95]).Sample((thickener, water, part) =>
        {
            var pot = Pot.With(Mass.FromGrams(100)).Add(Neat, Mass.FromGrams(thickener)).AddWater(Mass.FromGrams(water));
            var left = pot.TakeOut(Mass.FromGrams(part * pot.Total.Grams));
            Near(pot.DoseOf("N").Percent, left.DoseOf("N").Percent);
            Near(pot.ShareOf("N").Percent, left.ShareOf("N").Percent);
            Near(pot.Total.Grams * (1 - part), left.Total.Grams);
        });

    [Fact]
    public void Let_down_then_dosing_to_the_old_dose_comes_out_right()
        => Gen.Select(Grams, Grams, Gen.Double[0.001, 0.5]).Sample((thickener, added, part) =>
        {
            var pot = Pot.With(Mass.FromGrams(200)).Add(Neat, Mass.FromGrams(thickener));
            var dose = pot.DoseOf("N");
            var thinned = pot.TakeOut(Mass.FromGrams(part * pot.Total.Grams)).LetDown(Mass.FromGrams(added));
            Near(dose.Percent, thinned.Add(Neat, thinned.ThickenerToReach("N", dose)).DoseOf("N").Percent);
            var @base = LetDownCost.BaseFor(pot.In("N"), pot.Base, thinned.DoseOf("N"));
            Near(thinned.DoseOf("N").Percent, pot.LetDown(@base).DoseOf("N").Percent);
        });

    [Fact]
    public void Water_leaves_the_dose_and_lowers_the_share()
        => Gen.Select(Grams, Grams).Sample((thickener, water) =>
        {
            var pot = Pot.With(Mass.FromGrams(100)).Add(Neat, Mass.FromGrams(thickener));
            var wet = pot.AddWater(Mass.FromGrams(water));
            Assert.Equal(pot.DoseOf("N"), wet.DoseOf("N"));
            Assert.True(wet.ShareOf("N") < pot.ShareOf("N"));
        });

    [Fact]
    public void Pre_dilution_doses_the_thickener_alone_and_weighs_what_is_poured()
        => Grams.Sample(wanted =>
        {
            var poured = Cut.PouredFor(Mass.FromGrams(wanted));
            Near(4 * wanted, poured.Grams);
            var pot = Pot.With(Mass.FromGrams(100)).Add(Cut, poured);
            Near(wanted, pot.DoseOf("C").Percent);
            Near(3 * wanted, pot.Water.Grams);
        });

    [Fact]
    public void A_sample_of_all_there_is_is_a_mistake()
        => Assert.Throws<ArgumentOutOfRangeException>(() => Pot.With(Mass.FromGrams(10)).TakeOut(Mass.FromGrams(10)));

    private static void Near(double expected, double actual)
        => Assert.True(Math.Abs(expected - actual) <= 1e-12 * Math.Max(1, Math.Abs(expected)), $"{expected:R} against {actual:R}");
}
