using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Inference;

/// <summary>One thickener or two: the same questions.</summary>
public sealed class PosteriorFaceTests
{
    [Fact]
    public void A_posterior_of_one_thickener_tells_no_string()
    {
        var posterior = Made(Posteriors.Of(Bench.AlongSigmoid(9000, 0.5), null, []));
        Assert.Throws<ArgumentOutOfRangeException>(() => posterior.At(Dose.None, Quantity.Stringiness));
    }

    [Fact]
    public void A_run_that_wants_a_string_is_judged_over_two_doses()
    {
        var run = PairBench.Run(6000, (13, 20), PairBench.Read(1000, 4), PairBench.Dose("S", 1), PairBench.Read(1350, 8));
        var posterior = Made(Posteriors.Of(run, null, []));
        var here = Doses.FromPercent(0, 1);
        Assert.Equal(1, posterior.Evidence.Steps[^1].Doses.Strings.Percent, 12);
        Assert.Equal(1350, posterior.BodyAt(here, Percentage.FromPercent(90)).Median.MilliPascalSeconds, 200.0);
        Assert.Equal(8, posterior.StringAt(here, Percentage.FromPercent(90)).Median.Millimeters, 3.0);
    }

    [Fact]
    public void The_same_readings_give_the_same_draws_whenever_they_are_asked_for()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        var (one, other) = (Made(Posteriors.Of(run, run.Target!.Band, [])), Made(Posteriors.Of(run, run.Target!.Band, [])));
        var before = one.DrawsAt(Dose.FromPercent(2));
        _ = one.ChanceOfReaching(run.Target!.Band.Low, Dose.FromPercent(4));
        Assert.Equal(before, one.DrawsAt(Dose.FromPercent(2)));
        Assert.Equal(before, other.DrawsAt(Dose.FromPercent(2)));
    }

    private static Posterior Made(PosteriorOutcome outcome) => Assert.IsType<PosteriorOutcome.Found>(outcome).Posterior;
}
