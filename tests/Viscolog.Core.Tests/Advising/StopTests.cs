using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

/// <summary>How sure it has to be that a pot is in band before it is time to stop.</summary>
public sealed class StopTests
{
    /// <summary>Nine times in ten with two readings; with a single one it has to be 39 times in 40.</summary>
    [Theory]
    [InlineData(2, 0.9)]
    [InlineData(1, 0.975)]
    public void A_pot_just_sure_enough_stops_and_one_just_short_of_it_is_read_again(int readings, double needed)
    {
        var pot = Bench.AlongSigmoid(Bench.Sigmoid(2), 0.5, 0.7, 0.8);
        pot = pot with { Entries = pot.Entries.AddRange(Enumerable.Repeat(Bench.Read(Bench.Sigmoid(2)), readings - 1)) };
        var (under, over) = AtChance(needed, tolerance => One(pot with { Target = Around(pot, tolerance) }), a => a.Body.ChanceInBand);
        Assert.IsType<BenchAction.Measure>(under.Action);
        Assert.IsType<BenchAction.Stop>(over.Action);
    }

    /// <summary>Body and string together: 72 times in 100.</summary>
    [Fact]
    public void A_pot_of_two_thickeners_just_sure_enough_stops_and_one_just_short_of_it_does_not()
    {
        var (body, length) = (PairBench.Body(1.8, 1.2), PairBench.Length(1.8, 1.2));
        var run = PairBench.Along(body, (0.8 * length, 1.25 * length), ("S", 0.6), ("A", 0.9), ("S", 0.6), ("A", 0.9));
        var pot = run with { Entries = run.Entries.AddRange(Enumerable.Repeat(PairBench.Read(null, length), 4)) };
        var (under, over) = AtChance(
            0.72, tolerance => PairBench.Advise(pot with { Target = Around(pot, tolerance) }), a => a.ChanceAllInBand);
        Assert.IsNotType<BenchAction.Stop>(under.Action);
        Assert.IsType<BenchAction.Stop>(over.Action);
    }

    /// <summary>Advice on one pot for two bands, hardly narrower and hardly wider than the one that would give the chance.</summary>
    private static (Advice Under, Advice Over) AtChance(double needed, Func<double, Advice> withTolerance, Func<Advice, Percentage> chance)
    {
        var (low, high) = (1.0, 60.0);
        var (under, over) = (withTolerance(low), withTolerance(high));
        for (var i = 0; i < 14; i++)
        {
            var middle = (low + high) / 2;
            var advice = withTolerance(middle);
            (low, high, under, over) = chance(advice).Fraction < needed ? (middle, high, advice, over) : (low, middle, under, advice);
        }

        Assert.InRange(chance(under).Fraction, needed - 0.004, needed);
        Assert.InRange(chance(over).Fraction, needed, needed + 0.004);
        return (under, over);
    }

    private static Target.Value Around(Run run, double tolerance) => new(run.Target!.Band.Aim, Percentage.FromPercent(tolerance));

    private static Advice One(Run run) => Studied.Of(new(run)).Advice!;
}
