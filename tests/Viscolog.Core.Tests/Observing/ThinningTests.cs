using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Observing;

/// <summary>Steps with more readings than advice can use.</summary>
public sealed class ThinningTests
{
    [Theory]
    [InlineData(60, 4)]
    [InlineData(61, 4)]
    [InlineData(5000, 4)]
    [InlineData(100_000, 1)]
    [InlineData(50, 1000)]
    public void First_and_last_stay_none_comes_twice_and_the_beginning_is_seen_closely(int readings, int steps)
    {
        var kept = Thinning.Of([.. Enumerable.Range(0, readings)], steps);
        Assert.Equal((0, readings - 1), (kept[0], kept[^1]));
        Assert.Equal(kept.Distinct().Order(), kept);
        Assert.InRange(kept.Length, 3, Math.Min(readings, Thinning.MostOfStep));
        Assert.True(kept.Length < readings || readings <= Thinning.MostOfStep);
        var gaps = kept.Zip(kept.Skip(1), (a, b) => b - a).ToList();
        Assert.True(gaps.Max() <= Math.Max(1, 2.0 * readings / (steps > 100 ? 1 : 30)), "an even part of the time is never left out");
        Assert.True(gaps[0] == 1 || steps > 100);
    }

    [Fact]
    public void A_long_series_says_the_same_as_all_of_it_would_and_tells_so()
    {
        var run = Series(readings: 4000);
        var evidence = Assert.IsType<EvidenceOutcome.Usable>(Evidence.Of(run, run.Thickeners[0])).Evidence;
        Assert.Equal(
            new EvidenceWarning.Thinned(4000, evidence.Steps[1].Readings.Length),
            Assert.Single(evidence.Warnings.OfType<EvidenceWarning.Thinned>()));
        Assert.Equal(4000, evidence.Steps[1].Readings[^1].Entry - evidence.Steps[1].Readings[0].Entry + 1);
        var few = Series(readings: 50);
        Assert.Empty(
            Assert.IsType<EvidenceOutcome.Usable>(Evidence.Of(few, few.Thickeners[0])).Evidence.Warnings.OfType<EvidenceWarning.Thinned>());
    }

    private static Run Series(int readings) => Bench.Run(
        9000,
        [
            Bench.Read(850),
            Bench.Dose(1),
            .. Enumerable.Range(1, readings).Select(i => Bench.Read(1700 - (600 * Math.Exp(-i / 30.0)) + (i % 7), wait: i)),
        ]);

    [Fact]
    public void More_steps_than_a_pot_ever_takes_are_refused()
    {
        var run = Bench.AlongSigmoid(9000, [.. Enumerable.Repeat(0.001, Thinning.MostSteps)]);
        var refused = Assert.IsType<EvidenceOutcome.Unusable>(Evidence.Of(run, run.Thickeners[0]));
        Assert.Equal(new EvidenceTrouble.TooManySteps(Thinning.MostSteps + 1, Thinning.MostSteps), refused.Reason);
    }
}
