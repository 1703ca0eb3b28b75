using CsCheck;
using Viscolog.Core.Batches;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

/// <summary>A run taken to a batch.</summary>
public sealed class BatchPlanTests
{
    /// <summary>A run along the sigmoid law that ends in band at 2.4 %.</summary>
    private static readonly Run Done = Bench.AlongSigmoid(Bench.Sigmoid(2.4), 0.6, 0.6, 0.6, 0.4, 0.2);

    [Fact]
    public void First_goes_seventy_per_cent_and_the_steps_end_at_the_dose_of_the_run()
    {
        var plan = Plan(Done, 5000);
        Assert.Equal(0.7 * 2.4, plan.Steps[0].After.Percent, 0.01);
        Assert.Equal(2.4, plan.Steps[^1].After.Percent, 0.01);
        Assert.Equal(2, plan.Steps.Length);
        Assert.All(plan.Steps, s => Assert.True(s is { IsRead: true, Standing: not null, Expected: not null }));
    }

    [Fact]
    public void No_sum_passes_what_was_planned_nor_lags_a_step_of_the_scale()
        => Gen.Select(Gen.Double[50, 20_000], Gen.Int[0, 2].Select(i => i == 0 ? (double?)null : Math.Pow(10, -1 - i))).Sample(
            (size, step) =>
            {
                var plan = Plan(Done, size, step);
                var part = plan.Amounts.Parts[0];
                Assert.True(plan.Amounts.Base.Grams <= plan.Recipe.For(Mass.FromGrams(size)).Base.Grams * (1 + 1e-12));
                Assert.All(plan.Steps, s => Assert.True(s.PouredSoFar.Grams <= part.Poured.Grams * (1 + 1e-12)));
                Assert.True(part.Poured.Grams - plan.Steps[^1].PouredSoFar.Grams < plan.ScaleStep.Grams * (1 + 1e-9));
                Assert.Equal(plan.Steps[^1].PouredSoFar.Grams, plan.Steps.Sum(s => s.Poured.Grams), 1e-9);
                Assert.All(
                    plan.Steps.Select(s => s.Poured.Grams / plan.ScaleStep.Grams), steps => Assert.Equal(Math.Round(steps), steps, 1e-6));
                if (step is null)
                {
                    Assert.All(plan.Steps, s => Assert.True(s.Poured.Grams >= (3 - 1e-9) * plan.ScaleStep.Grams));
                }
            },
            iter: 6,
            threads: 1);

    [Fact]
    public void The_steps_are_the_same_at_every_size()
    {
        var (small, large) = (Plan(Done, 200), Plan(Done, 20_000));
        Assert.Equal(small.Steps.Length, large.Steps.Length);
        Assert.All(small.Steps.Zip(large.Steps), pair => Assert.Equal(pair.First.After.Percent, pair.Second.After.Percent, 0.02));
        Assert.All(small.Steps.Zip(large.Steps), pair => Assert.Equal(pair.First.Expected, pair.Second.Expected));
    }

    /// <summary>A run of two doses leaves much open between them, so its batch goes there in several steps.</summary>
    [Theory]
    [InlineData(0.3, 2)]
    [InlineData(1.2, 1)]
    public void Each_step_keeps_to_the_risk_of_the_policy_or_ends_at_the_final_dose(double risk, int between)
    {
        var run = Bench.AlongSigmoid(Bench.Sigmoid(2.4), 0.6, 1.8);
        var request = Request(run, new BatchSize.OfMass(Mass.FromGrams(5000)), null) with { Risk = Percentage.FromPercent(risk) };
        var steps = Assert.IsType<BatchOutcome.Planned>(BatchPlans.Of(request)).Plan.Steps;
        Assert.True(steps.Length - 2 >= between);
        Assert.All(steps[1..^1], s => Assert.InRange(s.ChanceOver!.Value.Percent, 0.8 * risk, risk));
        Assert.Equal(2.4, steps[^1].After.Percent, 0.01);
    }

    [Fact]
    public void A_run_that_is_over_gives_the_dose_that_its_curve_names()
    {
        var plan = Plan(Done with { Target = new Target.Value(Viscosity.FromMilliPascalSeconds(Bench.Sigmoid(1.6)), null) }, 5000);
        Assert.Equal(1.6, plan.Recipe.Parts[0].Dose.Percent, 0.1);
        Named(plan, isOver: true);
    }

    [Fact]
    public void A_run_that_is_short_gives_the_dose_that_its_curve_names()
    {
        var plan = Plan(Done with { Target = new Target.Value(Viscosity.FromMilliPascalSeconds(Bench.Sigmoid(2.8)), null) }, 5000);
        Assert.Equal(2.8, plan.Recipe.Parts[0].Dose.Percent, 0.2);
        Named(plan, isOver: false);
    }

    [Fact]
    public void Without_a_target_the_body_of_the_run_is_aimed_at()
    {
        var plan = Plan(Done with { Target = null }, 5000);
        Assert.Equal(2.4, plan.Recipe.Parts[0].Dose.Percent, 9);
        Assert.Equal(Bench.Sigmoid(2.4), plan.Band!.Aim.MilliPascalSeconds, 0.05 * Bench.Sigmoid(2.4));
    }

    [Fact]
    public void Two_thickeners_go_in_by_the_same_part_of_each_in_the_order_of_the_run()
    {
        var pair = Done with
        {
            Thickeners = [Bench.Thickener, new("U")],
            Entries = [new Entry.Dosed("U", Mass.FromGrams(0.5)), .. Done.Entries],
        };
        var plan = Plan(pair, 5000);
        Assert.Equal("U then T", string.Join(" then ", plan.Steps.Take(2).Select(s => s.Thickener)));
        Assert.Equal([false, true], plan.Steps.Take(2).Select(s => s.IsRead));
        Assert.Equal([0.5, 2.4], plan.Recipe.Parts.Select(p => Math.Round(p.Dose.Percent, 9)));
        foreach (var stage in plan.Steps.GroupBy(s => s.Stage))
        {
            Assert.Equal(stage.First().After.Percent / 0.5, stage.Last().After.Percent / 2.4, 0.01);
        }
    }

    [Fact]
    public void Cut_thickener_is_poured_with_its_water()
    {
        var cut = Done with
        {
            Thickeners = [Bench.Thickener with { Dilution = new(1, 1) }],
            Entries = [.. Done.Entries.Select(e => e is Entry.Dosed d ? d with { Poured = Mass.FromGrams(2 * d.Poured.Grams) } : e)],
        };
        var plan = Plan(cut, 5000);
        Assert.Equal(2.4, plan.Recipe.Parts[0].Dose.Percent, 9);
        Assert.Equal(plan.Amounts.Parts[0].Neat.Grams, plan.Amounts.Parts[0].Water.Grams, 9);
        var percent = 100 / plan.Amounts.Base.Grams;
        Assert.Equal(2 * 2.4, percent * plan.Steps[^1].PouredSoFar.Grams, percent * plan.ScaleStep.Grams);
    }

    [Fact]
    public void A_scale_that_is_too_coarse_is_told_of()
    {
        var coarse = Assert.IsType<BatchRefusal.ScaleTooCoarse>(Refusal(Done, new BatchSize.OfMass(Mass.FromGrams(20)), 1));
        Assert.True(coarse.SmallestGrams < coarse.Step.Grams && 3 * coarse.Needed.Grams <= coarse.SmallestGrams);
        var few = Assert.Single(Plan(Done, 400, 1).Notes.OfType<BatchNote.FewScaleSteps>());
        Assert.Equal(1, few.Step.Grams);
        // Cut with that much water the smallest addition is three steps; without, it is not.
        Assert.InRange(Plan(Done, 400).Steps.Min(s => s.Poured.Grams) * (1 + few.Water), 3 - (0.1 * (1 + few.Water)), 6);
    }

    [Fact]
    public void Litres_need_a_density()
    {
        var size = new BatchSize.OfVolume(Volume.FromMilliliters(5000));
        Assert.IsType<BatchRefusal.NoDensity>(Refusal(Done, size, null));
        var dense = Done with { Base = new("B", Density.FromGramsPerMilliliter(1.2)) };
        var plan = Assert.IsType<BatchOutcome.Planned>(BatchPlans.Of(new(dense, size))).Plan;
        Assert.Equal(5000, plan.Volume!.Value.Milliliters, 5.0);
    }

    [Fact]
    public void What_can_not_be_a_batch_is_refused_with_what_to_do()
    {
        var size = new BatchSize.OfMass(Mass.FromGrams(5000));
        Assert.IsType<BatchRefusal.NothingDosed>(Refusal(Bench.Run(9000, Bench.Read(1000)), size, null));
        var beyond = Done with { Target = new Target.Value(Viscosity.FromMilliPascalSeconds(1e9), null) };
        var no = Assert.IsType<BatchRefusal.NoDoseForTarget>(Refusal(beyond, size, null));
        Assert.Equal((false, Bench.Name), (no.IsOver, no.Thickener));
        var low = Done with { Entries = [Bench.Read(1000, ph: 6.5), Bench.Dose(1), Bench.Read(1001, ph: 6.5)] };
        Assert.Equal(6.5, Assert.IsType<BatchRefusal.LowPh>(Refusal(low, size, null)).Ph);
    }

    private static void Named(BatchPlan plan, bool isOver)
    {
        var source = Assert.IsType<BatchSource.CurveOfRun>(plan.Source);
        Assert.Equal((isOver, Bench.Name, 2.4), (source.IsOver, source.Thickener, Math.Round(source.Reached.Percent, 9)));
        Assert.Equal(source.Named.Median, plan.Recipe.Parts[0].Dose);
    }

    private static BatchPlan Plan(Run run, double grams, double? step = null)
        => Assert.IsType<BatchOutcome.Planned>(BatchPlans.Of(Request(run, new BatchSize.OfMass(Mass.FromGrams(grams)), step))).Plan;

    private static BatchRefusal Refusal(Run run, BatchSize size, double? step)
        => Assert.IsType<BatchOutcome.Refused>(BatchPlans.Of(Request(run, size, step))).Reason;

    private static BatchPlanRequest Request(Run run, BatchSize size, double? step)
        => new(run, size) { ScaleStep = step is { } grams ? Mass.FromGrams(grams) : null };
}
