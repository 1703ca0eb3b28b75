using Viscolog.Core.Advising;
using Viscolog.Core.Curves;
using Viscolog.Core.Inference;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Inference;

public sealed class HistoryTests
{
    /// <summary>A base that is ten times as thick, logged under the same name, and dosed with something far weaker.</summary>
    [Fact]
    public void A_history_that_the_readings_contradict_is_named_and_loses_its_weight()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        var unlike = Bench.Run(
            9000,
            Bench.Read(10000),
            Bench.Dose(1),
            Bench.Read(10500),
            Bench.Dose(1),
            Bench.Read(11000),
            Bench.Dose(1),
            Bench.Read(11600));
        var advised = Studied.Of(new(run) { History = [unlike, unlike, unlike] });
        Assert.True(advised.Posterior.ChanceUnlikeHistory.Fraction > 0.9, advised.Posterior.ChanceUnlikeHistory.ToString());
        Assert.Contains(advised.Advice!.Warnings, w => w is AdviceWarning.UnlikeHistory);
        var cold = ((PosteriorOutcome.Found)Posteriors.OfCurve(run, run.Target!.Band, [])).Posterior;
        var dose = Dose.FromPercent(1.5);
        Assert.Equal(cold.BodyAt(dose, Study.Level).Median.Ln, advised.Posterior.BodyAt(dose, Study.Level).Median.Ln, 0.15);
    }

    [Fact]
    public void A_history_that_agrees_is_kept()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        var like = Bench.AlongSigmoid(9000, 0.4, 0.6, 0.6, 0.5);
        var advised = Studied.Of(new(run) { History = [like, like, like] });
        Assert.True(advised.Posterior.ChanceUnlikeHistory.Fraction < 0.15, advised.Posterior.ChanceUnlikeHistory.ToString());
        Assert.DoesNotContain(advised.Advice!.Warnings, w => w is AdviceWarning.UnlikeHistory);
    }

    /// <summary>
    /// Earlier curves without any scatter say nothing of how this run's readings will scatter: that place of a row stays standard normal,
    /// while the others move.
    /// </summary>
    [Fact]
    public void Earlier_runs_tell_of_the_curve_and_not_of_the_scatter()
    {
        var like = Bench.AlongSigmoid(9000, 0.4, 0.6, 0.6, 0.5);
        var prior = Studied.Of(new(Bench.AlongSigmoid(9000, 0.5)) { History = [like, like, like] }).Posterior.Prior;
        for (var s = 0; s < Shapes.All.Length; s++)
        {
            var row = new double[CurveParameters.Count(Shapes.All[s])];
            prior.Mixtures[s].Draw(0.5, new double[row.Length], row);
            Assert.Equal(0, row[Shapes.All[s].Parameters.Length + Nuisances.ScatterPlace], 1e-12);
        }
    }

    /// <summary>
    /// A thickener that took minutes in three runs is taken to in the next: τ is learned from the readings that built up.
    /// </summary>
    [Fact]
    public void Earlier_runs_tell_how_fast_the_thickener_builds_up()
    {
        Entry[] Step(double from, double to) =>
            [
                Bench.Dose(0.8),
                .. new double[] { 30, 120, 400, 1500 }.Select(t => Bench.Read(from * Math.Pow(to / from, 1 - Math.Exp(-t / 200)), t)),
            ];
        var slow = Bench.Run(9000, [Bench.Read(1000), .. Step(1000, 1700), .. Step(1700, 3800)]);
        var fresh = Bench.Run(9000, Bench.Read(1000), Bench.Dose(0.8), Bench.Read(1080, 30));
        double Median(params Run[] history)
            => Studied.Of(new(fresh) { History = [.. history] }).Posterior.Kinetics().Select(k => k.TimeConstant).Order().ElementAt(250);
        Assert.InRange(Median(slow, slow, slow), 120, 320);
        Assert.True(Median() < Median(slow, slow, slow));
    }

    [Fact]
    public void Without_history_nothing_can_be_unlike_it()
        => Assert.Equal(
            0,
            ((PosteriorOutcome.Found)Posteriors.OfCurve(Bench.AlongSigmoid(9000, 0.5), null, [])).Posterior.ChanceUnlikeHistory.Fraction);

    /// <summary>
    /// Three runs along the same curve allow a bolder step than none, and one past the ordinary cap only over doses they have read.
    /// </summary>
    [Fact]
    public void A_history_lets_the_first_dose_go_further_but_not_past_what_it_read()
    {
        var run = Bench.Run(9000, Bench.Read(1000));
        var like = Bench.AlongSigmoid(9000, 0.4, 0.6, 0.6, 0.5);
        double FirstDose(params Run[] history) => Assert.IsType<BenchAction.Add>(
            Studied.Of(new(run) { History = [.. history] }).Advice!.Action).After.Percent;
        var (cold, warm) = (FirstDose(), FirstDose(like, like, like));
        Assert.True(warm > 1.5 * cold, $"{warm} against {cold}");
        Assert.True(warm <= 2.1 + 1e-9, $"{warm}");
    }

    /// <summary>However many runs the log holds, the latest few are worked out.</summary>
    [Fact]
    public void Older_runs_than_the_latest_few_change_nothing()
    {
        var run = Bench.AlongSigmoid(9000, 0.5);
        Run[] latest = [.. Enumerable.Range(0, 8).Select(_ => Bench.AlongSigmoid(9000, 0.4, 0.6, 0.6, 0.5))];
        var old = Bench.AlongSigmoid(9000, 2, 0.3);
        Percentage level = Study.Level;
        Estimate At(params Run[] history) => (
            (PosteriorOutcome.Found)Posteriors.OfCurve(run, run.Target!.Band, [.. history])).Posterior.BodyAt(Dose.FromPercent(2), level);
        Assert.Equal(At(latest), At([old, old, .. latest]));
    }
}
