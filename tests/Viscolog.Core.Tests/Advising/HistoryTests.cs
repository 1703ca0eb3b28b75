using Viscolog.Core.Advising;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

public sealed class HistoryTests
{
    /// <summary>A base that is ten times as thick, logged under the same name, and dosed with something far weaker.</summary>
    [Fact]
    public void A_history_that_the_readings_contradict_is_named_and_loses_its_weight()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        var unlike = Bench.Run(9000, Bench.Read(10000), Bench.Dose(1), Bench.Read(10500), Bench.Dose(1), Bench.Read(11000), Bench.Dose(1), Bench.Read(11600));
        var advised = Assert.IsType<AdviceOutcome.Advised>(Advisor.Advise(new(run) { History = [unlike, unlike, unlike] }));
        Assert.True(advised.Belief.ChanceUnlikeHistory.Fraction > 0.9, advised.Belief.ChanceUnlikeHistory.ToString());
        Assert.Contains(advised.Advice.Warnings, w => w.Contains("unlike the earlier runs", StringComparison.Ordinal));
        var cold = ((BeliefOutcome.Believed)RunBeliefs.Of(run, run.Target!.Band, [])).Belief;
        var dose = Dose.FromPercent(1.5);
        Assert.Equal(cold.BodyAt(dose, Advisor.Level).Median.Ln, advised.Belief.BodyAt(dose, Advisor.Level).Median.Ln, 0.15);
    }

    [Fact]
    public void A_history_that_agrees_is_kept()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        var like = Bench.AlongSigmoid(9000, 0.4, 0.6, 0.6, 0.5);
        var advised = Assert.IsType<AdviceOutcome.Advised>(Advisor.Advise(new(run) { History = [like, like, like] }));
        Assert.True(advised.Belief.ChanceUnlikeHistory.Fraction < 0.15, advised.Belief.ChanceUnlikeHistory.ToString());
        Assert.DoesNotContain(advised.Advice.Warnings, w => w.Contains("unlike", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_history_nothing_can_be_unlike_it()
        => Assert.Equal(0, ((BeliefOutcome.Believed)RunBeliefs.Of(Bench.AlongSigmoid(9000, 0.5), null, [])).Belief.ChanceUnlikeHistory.Fraction);
}
