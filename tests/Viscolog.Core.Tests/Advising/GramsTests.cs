using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Batches;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

/// <summary>
/// What advice becomes on a scale: thickener can't be taken out again, so it is always rounded down to a whole step; base can be followed
/// by more of either, so it goes to the nearest.
/// </summary>
public sealed class GramsTests
{
    /// <summary>A scale so fine that it shows what was meant before any rounding.</summary>
    private const double Fine = 1e-6;

    private static readonly Run Short = Bench.AlongSigmoid(9000, 0.5, 0.7);

    private static readonly Run Over = Bench.AlongSigmoid(Bench.Sigmoid(1.5), 0.5, 0.5, 0.5, 0.5, 0.5);

    private static readonly Run ShortPair = PairBench.Along(6000, (13, 20), ("S", 0.6), ("A", 0.6));

    private static readonly Run OverPair = PairBench.Along(6500, (13, 20), ("S", 0.6), ("A", 2.5));

    [Theory]
    [InlineData(3.2, 3)]
    [InlineData(3.8, 3)]
    [InlineData(7.97, 7)]
    public void Thickener_is_rounded_down_to_a_whole_step(double steps, int poured)
    {
        Assert.Equal(poured, StepsWeighed(Short, steps), 1e-6);
        Assert.Equal(poured, StepsWeighed(ShortPair, steps), 1e-6);
    }

    [Theory]
    [InlineData(3.2, 3)]
    [InlineData(3.8, 4)]
    public void Base_goes_to_the_nearest_step(double steps, int poured)
    {
        Assert.Equal(poured, StepsWeighed(Over, steps), 1e-6);
        Assert.Equal(poured, StepsWeighed(OverPair, steps), 1e-6);
    }

    [Fact]
    public void Base_for_two_thickeners_is_one_step_at_least() => Assert.Equal(1, StepsWeighed(OverPair, 0.3), 1e-6);

    [Theory]
    [InlineData(41.2, 41)]
    [InlineData(41.8, 41)]
    public void A_batch_sheet_rounds_every_sum_down(double steps, int poured)
    {
        var done = Bench.AlongSigmoid(Bench.Sigmoid(2.4), 0.6, 0.6, 0.6, 0.4, 0.2);
        double[] exact = [.. Sums(done, Fine)];
        Assert.NotEmpty(exact);
        for (var i = 0; i < exact.Length; i++)
        {
            var step = exact[i] / steps;
            Assert.Equal(poured, Sums(done, step)[i] / step, 1e-6);
        }
    }

    /// <summary>The steps of a scale that advice weighs, where it means so many of them.</summary>
    private static double StepsWeighed(Run run, double steps)
    {
        var step = Weighed(run, Fine) / steps;
        return Weighed(run, step) / step;
    }

    private static double Weighed(Run run, double step) => ActionOf(run with { ScaleStep = Mass.FromGrams(step) }) switch
    {
        BenchAction.Add add => add.Poured.Grams,
        BenchAction.LetDown down => down.Base.Grams,
        var other => throw new InvalidOperationException($"nothing to weigh: {other}"),
    };

    private static BenchAction ActionOf(Run run) => Studied.Of(new(run)).Advice!.Action;

    private static ImmutableArray<double> Sums(Run run, double step)
    {
        var request = new BatchPlanRequest(run, new BatchSize.OfMass(Mass.FromGrams(5000))) { ScaleStep = Mass.FromGrams(step) };
        return [.. Assert.IsType<BatchOutcome.Planned>(BatchPlans.Of(request)).Plan.Steps.Select(s => s.PouredSoFar.Grams)];
    }
}
