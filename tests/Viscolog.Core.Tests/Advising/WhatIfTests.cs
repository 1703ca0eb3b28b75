using Viscolog.Core.Advising;
using Viscolog.Core.Inference;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

public sealed class WhatIfTests
{
    [Fact]
    public void The_advised_addition_asked_about_gives_the_advice_again()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        var advice = Of(new(run));
        var add = Assert.IsType<BenchAction.Add>(advice.Action);
        var asked = Of(new(run) { WhatIf = add.Poured }).WhatIf;
        Assert.NotNull(asked);
        Assert.Equal(add.After.Percent, asked.After.Percent, 1e-9);
        Assert.Equal(advice.Body.ChanceOver.Percent, asked.ChanceOver.Percent, 1e-9);
        Assert.Equal(advice.Body.ChanceInBand.Percent, asked.ChanceInBand.Percent, 1e-9);
    }

    [Fact]
    public void Without_a_question_there_is_no_answer() => Assert.Null(Of(new(Bench.AlongSigmoid(9000, 0.5))).WhatIf);

    [Fact]
    public void A_large_addition_is_told_to_break_the_rules_of_the_advice()
    {
        var asked = Of(new(Bench.AlongSigmoid(9000, 0.5, 0.7)) { WhatIf = Mass.FromGrams(4.5) }).WhatIf;
        Assert.True(asked!.ChanceOver > asked.Risk);
        Assert.True(asked.BeyondLimit!.Dose < asked.After);
        Assert.Equal(30, asked.MostAtOnce!.Value.Percent, 1e-6);
    }

    [Fact]
    public void The_dose_that_teaches_most_lies_beyond_what_is_known()
    {
        var posterior = ((PosteriorOutcome.Found)Posteriors.OfCurve(Bench.AlongSigmoid(9000, 0.5, 0.7), null, [])).Posterior;
        var next = TestDoses.Next(posterior);
        Assert.NotNull(next);
        Assert.InRange(next.Dose.Percent, 1.8, 5);
        Assert.InRange(next.Gain.Percent, 2, 100);
    }

    /// <summary>The gain foretold for a dose is what a reading there then brings, roughly: the mean variance falls.</summary>
    [Fact]
    public void Reading_the_proposed_dose_makes_the_curve_surer()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        var before = ((PosteriorOutcome.Found)Posteriors.OfCurve(run, null, [])).Posterior;
        var next = TestDoses.Next(before)!;
        var after = (
            (PosteriorOutcome.Found)Posteriors.OfCurve(Bench.AlongSigmoid(9000, 0.5, 0.7, next.Dose.Percent - 1.2), null, [])).Posterior;
        Assert.True(Spread(after) < 0.8 * Spread(before));

        static double Spread(Posterior posterior) => Enumerable.Range(0, 11).Sum(i =>
        {
            var body = posterior.BodyAt(Dose.FromPercent(i / 2.0), Study.Level);
            return body.High.Ln - body.Low.Ln;
        });
    }

    [Fact]
    public void A_pot_too_stiff_to_stir_is_not_proposed()
    {
        TestDose? Next(double tooStiff)
        {
            var run = Bench.AlongSigmoid(9000, 0.5, 0.7) with { TooStiff = Viscosity.FromMilliPascalSeconds(tooStiff) };
            return TestDoses.Next(((PosteriorOutcome.Found)Posteriors.OfCurve(run, null, [])).Posterior);
        }

        // The pot stands at 2400 mPa·s; a dose that could be stirred whatever the curve is left, and then none.
        Assert.True(Next(1e9)!.Expected.Median.MilliPascalSeconds > 6000);
        Assert.InRange(Next(6000)!.Expected.High.MilliPascalSeconds, 2400, 6000);
        Assert.Null(Next(3000));
    }

    private static Advice Of(StudyRequest request) => Studied.Of(request).Advice!;
}
