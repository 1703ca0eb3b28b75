using Viscolog.Core.Advising;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

public sealed class PairAdviceTests
{
    private static readonly (double, double) Wanted = (13, 20);

    [Fact]
    public void The_first_advice_is_to_read_body_and_string()
        => Assert.IsType<AdviceReason.NothingRead>(Measured(PairBench.Run(6000, Wanted)).Why);

    [Fact]
    public void A_string_that_was_never_read_is_asked_for()
    {
        var advice = Measured(PairBench.Run(6000, Wanted, PairBench.Read(1000, null)));
        Assert.True(AsksForString(advice));
        Assert.False(Assert.IsType<AdviceReason.StringNotRead>(advice.Why).Ever);
        Assert.Null(advice.StringLength!.Now);
    }

    [Fact]
    public void A_string_that_was_not_read_since_the_last_addition_is_asked_for()
        => Assert.True(
            AsksForString(
                Measured(PairBench.Run(6000, Wanted, PairBench.Read(1000, 6), PairBench.Dose("A", 0.5), PairBench.Read(1490, null)))));

    [Fact]
    public void A_body_that_was_not_read_since_the_last_addition_is_asked_for()
        => Assert.False(
            AsksForString(
                Measured(PairBench.Run(6000, Wanted, PairBench.Read(1000, 6), PairBench.Dose("S", 0.5), PairBench.Read(null, 8)))));

    [Fact]
    public void One_addition_of_one_thickener_is_advised_with_its_effect_on_both_and_a_plan()
    {
        var run = PairBench.Along(6000, Wanted, ("S", 0.6), ("A", 0.6));
        var advice = PairBench.Advise(run);
        var add = Assert.IsType<BenchAction.Add>(advice.Action);
        // What brings the string thickens too, so it is learned first.
        Assert.Equal(("S", "A"), (advice.Thickener.Name, advice.Thickeners.Single(t => t.Name != advice.Thickener.Name).Name));
        Assert.Equal(add.Increment.Percent, add.Poured.Grams, 1e-9);
        Assert.True(advice.Body.Expected!.Median > advice.Body.Now!.Median);
        Assert.True(advice.StringLength!.Expected!.Low < advice.StringLength.Expected.High);
        Assert.True(advice.Thickener.Planned!.About.Percent >= add.Increment.Percent - 0.01);
        Assert.InRange(
            advice.Body.ChanceOver.Fraction + advice.StringLength.ChanceOver.Fraction, 0, IncrementPolicy.DefaultRisk.Fraction + 0.001);
        Assert.True(advice.ChanceAllInBand <= advice.Body.ChanceInBand);
    }

    [Fact]
    public void The_same_run_gives_the_same_advice()
    {
        var run = PairBench.Along(6000, Wanted, ("S", 0.6), ("A", 0.6));
        Assert.Equal(PairBench.Advise(run).Why, PairBench.Advise(run).Why);
        Assert.Equal(PairBench.Advise(run).Action, PairBench.Advise(run).Action);
    }

    [Fact]
    public void In_band_with_both_it_is_time_to_stop()
    {
        var (body, length) = (PairBench.Body(1.8, 1.2), PairBench.Length(1.8, 1.2));
        var run = PairBench.Along(body, (0.8 * length, 1.25 * length), ("S", 0.6), ("A", 0.9), ("S", 0.6), ("A", 0.9));
        var repeated = run with { Entries = run.Entries.AddRange(Enumerable.Repeat(PairBench.Read(null, length), 5)) };
        Assert.IsType<BenchAction.Stop>(PairBench.Advise(repeated).Action);
    }

    [Fact]
    public void Repeats_of_the_string_are_asked_for_where_they_decide()
    {
        var (body, length) = (PairBench.Body(1.8, 1.2), PairBench.Length(1.8, 1.2));
        var run = PairBench.Along(body, (0.9 * length, 1.12 * length), ("S", 0.6), ("A", 0.9), ("S", 0.6), ("A", 0.9));
        Assert.True(AsksForString(Measured(run)));
    }

    [Fact]
    public void A_body_far_over_is_let_down()
    {
        var advice = PairBench.Advise(PairBench.Along(6500, Wanted, ("S", 0.6), ("A", 2.5)));
        var down = Assert.IsType<BenchAction.LetDown>(advice.Action);
        Assert.True(advice.Body.Now!.Median.MilliPascalSeconds > 1.15 * 6500);
        Assert.Equal(6500, advice.Body.Expected!.Median.MilliPascalSeconds, 100.0);
    }

    [Fact]
    public void A_body_that_would_pass_before_the_string_arrives_is_said_so_and_let_down()
    {
        // The body is at its aim with A alone; the string wants about 3 % of S, which thickens 2.5 times.
        var run = PairBench.Along(PairBench.Body(2.4, 0.4), (22, 34), ("S", 0.4), ("A", 1.2), ("A", 1.2));
        var length = PairBench.Length(2.4, 0.4);
        var repeated = run with { Entries = run.Entries.AddRange(Enumerable.Repeat(PairBench.Read(null, length), 3)) };
        var advice = PairBench.Advise(repeated);
        Assert.Equal("S", Assert.IsType<AdviceReason.BodyWouldPass>(advice.Why).Thickener);
        Assert.IsType<BenchAction.LetDown>(advice.Action);
    }

    [Fact]
    public void Three_thickeners_are_refused()
    {
        var run = PairBench.Run(6000, Wanted, PairBench.Read(1000, 6));
        var refused = Assert.IsType<StudyOutcome.Refused>(Study.Of(new(run with { Thickeners = run.Thickeners.Add(new Thickener("C")) })));
        Assert.Equal(new Core.Observing.EvidenceTrouble.NotTwoThickeners(), refused.Reason);
    }

    [Fact]
    public void Two_thickeners_without_a_string_target_get_a_study_but_no_advice()
    {
        var run = PairBench.Along(6000, Wanted, ("S", 0.6), ("A", 0.6)) with { TargetString = null };
        Assert.Equal(["A", "S"], Assert.IsType<NoAdvice.NoStringTarget>(Studied.Of(new(run)).NoAdvice).Thickeners);
    }

    [Fact]
    public void The_associative_thickener_brings_the_string_wherever_it_stands()
    {
        var run = PairBench.Run(6000, Wanted);
        Assert.Equal("S", PairRoles.Of(run)!.StringThickener.Name);
        Assert.Equal("S", PairRoles.Of(run with { Thickeners = [run.Thickeners[1], run.Thickeners[0]] })!.StringThickener.Name);
        Assert.Equal(
            "S",
            PairRoles.Of(
                run with
                {
                    Thickeners = [run.Thickeners[0] with { Chemistry = ThickenerChemistry.Associative }, run.Thickeners[1]],
                })!.StringThickener.Name);
    }

    [Fact]
    public void A_low_pH_comes_first()
    {
        var run = PairBench.Along(6000, Wanted, ("S", 0.6)) with
        {
            Thickeners = [new Thickener("A") { Chemistry = ThickenerChemistry.AlkaliSwellable }, new Thickener("S")],
        };
        var sour = (Entry.Measured)run.Entries[^1];
        var advice = PairBench.Advise(
            run with
            {
                Entries = run.Entries.SetItem(
                    run.Entries.Length - 1, sour with { Reading = sour.Reading with { Acidity = Acidity.FromPh(6.5) } }),
            });
        Assert.Equal(Remedy.RaisePh, Assert.IsType<BenchAction.GiveUp>(advice.Action).Remedy);
    }

    private static bool AsksForString(Advice advice) => ((BenchAction.Measure)advice.Action).IsOfString;

    private static Advice Measured(Run run)
    {
        var advice = PairBench.Advise(run);
        Assert.IsType<BenchAction.Measure>(advice.Action);
        return advice;
    }
}
