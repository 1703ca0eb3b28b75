using MathNet.Numerics.Distributions;
using Viscolog.Core.Advising;
using Viscolog.Core.Checking;
using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Checking;

/// <summary>Verdicts on batches.</summary>
public sealed class BatchCheckTests
{
    private static readonly DateOnly Today = new(2026, 3, 2);

    private static readonly Specification Wanted = new("P") { Body = new Target.Value(Viscosity.FromMilliPascalSeconds(9000), null) };

    [Fact]
    public void A_mean_in_the_middle_is_accepted_with_the_parts_of_its_uncertainty()
    {
        var check = Check(Batch(8900, 9100));
        Assert.IsType<Verdict.Accept>(check.Verdict);
        Assert.IsType<NextStep.Release>(check.Next);
        var value = check.Body!.Value!;
        Assert.Equal(Math.Sqrt(8900 * 9100), value.Body.MilliPascalSeconds, 1e-6);
        var known = Assert.IsType<UncertaintyPart.Repeatability>(value.Parts[0]);
        Assert.Equal((ScatterOrigin.Stated, 2), (known.Origin, known.Readings));
        Assert.True(Assert.IsType<UncertaintyPart.OfTemperature>(value.Parts[1]).IsRead);
        // The stated 4 % with 50 degrees of freedom, and the readings' own with one.
        var own = Math.Pow(100 * Math.Log(9100 / 8900.0), 2) / 2;
        Assert.Equal(Math.Sqrt(((50 * 4 * 4) + own) / 51 / 2), value.Parts[0].Size.Percent, 1e-9);
        // Thermometer 0.2 °C: B/T² · 0.2 with the default of 2000 K at 296.15 K.
        Assert.Equal(100 * 2000 * 0.2 / (296.15 * 296.15), value.Parts[1].Size.Percent, 1e-9);
        Assert.Equal(Math.Sqrt(value.Parts.Sum(p => p.Size.Percent * p.Size.Percent)), value.Uncertainty.Percent, 1e-9);
    }

    [Fact]
    public void The_chance_is_that_of_the_rule_on_the_ln_scale()
    {
        var body = Check(Batch(8000, 8000)).Body!;
        var (u, freedom) = (body.Value!.Uncertainty.Fraction, body.Value.DegreesOfFreedom);
        Assert.Equal(Conformity.Chance(Math.Log(8000), u, Math.Log(7650), Math.Log(10350), freedom), body.Chance!.Value.Fraction, 1e-12);
        // At the edge of the acceptance interval the chance is the rule's.
        Assert.Equal(0.95, Conformity.Chance(body.Accepted!.Low.Ln, u, Math.Log(7650), Math.Log(10350), freedom), 1e-6);
    }

    /// <summary>The guard bands are alike at both limits: just inside them a batch is accepted, just outside it is not.</summary>
    [Fact]
    public void The_acceptance_interval_keeps_as_far_from_the_upper_limit_as_from_the_lower()
    {
        var body = Check(Batch(9000, 9000)).Body!;
        var (u, freedom, accepted) = (body.Value!.Uncertainty.Fraction, body.Value.DegreesOfFreedom, body.Accepted!);
        Assert.Equal(0.95, Conformity.Chance(accepted.High.Ln, u, Math.Log(7650), Math.Log(10350), freedom), 1e-6);
        Assert.Equal(accepted.Low.Ln - Math.Log(7650), Math.Log(10350) - accepted.High.Ln, 1e-9);
        foreach (var (edge, inwards) in new[] { (accepted.Low.MilliPascalSeconds, 1.003), (accepted.High.MilliPascalSeconds, 0.997) })
        {
            Assert.IsType<Verdict.Accept>(Check(Batch(edge * inwards, edge * inwards)).Verdict);
            Assert.IsType<Verdict.Undecided>(Check(Batch(edge / inwards, edge / inwards)).Verdict);
        }
    }

    [Fact]
    public void One_reading_is_undecided_however_good()
    {
        var check = Check(Batch(9000));
        Assert.Equal(1, Assert.IsType<Verdict.Undecided>(check.Verdict).MoreReadings);
        Assert.Equal(1, Assert.IsType<NextStep.Read>(check.Next).Readings);
    }

    [Fact]
    public void Near_a_limit_it_is_undecided_and_so_many_more_readings_decide()
    {
        var undecided = Assert.IsType<Verdict.Undecided>(Check(Batch(8000, 8000)).Verdict);
        var more = undecided.MoreReadings!.Value;
        Assert.IsType<Verdict.Undecided>(Check(Batch([.. Enumerable.Repeat(8000.0, 2 + more - 1)])).Verdict);
        Assert.IsType<Verdict.Accept>(Check(Batch([.. Enumerable.Repeat(8000.0, 2 + more)])).Verdict);
    }

    [Fact]
    public void On_the_limit_no_number_of_readings_decides()
    {
        var check = Check(Batch(7650, 7650, 7650, 7650));
        Assert.Null(Assert.IsType<Verdict.Undecided>(check.Verdict).MoreReadings);
        Assert.IsType<BenchAction.Add>(Assert.IsType<NextStep.Correct>(check.Next).Advice.Action);
    }

    /// <summary>Two readings of an unstated method accept no mean yet; one more does, so the edge is worth moving away from.</summary>
    [Fact]
    public void On_the_limit_of_an_unstated_method_it_is_moved_toward_the_aim_too()
    {
        Assert.Null(Check(Batch(7650, 7650) with { Repeatability = null }).Body!.Accepted);
        var check = Check(Batch(7650, 7650, 7650, 7650) with { Repeatability = null });
        Assert.IsType<BenchAction.Add>(Assert.IsType<NextStep.Correct>(check.Next).Advice.Action);
        Assert.Equal(1, Assert.IsType<NextStep.Read>(Check(Batch(8950, 8950) with { Repeatability = null }).Next).Readings);
        var high = Check(Batch(10350, 10350) with { Repeatability = null });
        var nothing = Assert.IsType<StepReason.ReadingsDecideNothing>(Assert.IsType<NextStep.Rework>(high.Next).What);
        Assert.Equal((null, high.Body!.Value!.Parts[0]), (nothing.More, nothing.Greatest));
    }

    [Fact]
    public void Short_is_rejected_and_corrected_by_advice_over_is_let_down()
    {
        var low = Check(Batch(6000, 6100));
        Assert.Equal(Defect.BodyShort, Assert.Single(Assert.IsType<Verdict.Reject>(low.Verdict).Defects));
        var correction = Assert.IsType<NextStep.Correct>(low.Next).Advice;
        Assert.IsType<BenchAction.Add>(correction.Action);
        Assert.InRange(correction.Body.Expected!.Median.MilliPascalSeconds, 6500, 9000);
        var high = Check(Batch(13000, 13200));
        Assert.Equal(Defect.BodyOver, Assert.Single(Assert.IsType<Verdict.Reject>(high.Verdict).Defects));
        var down = Assert.IsType<NextStep.Correct>(high.Next).Advice;
        Assert.IsType<BenchAction.LetDown>(down.Action);
        Assert.Equal(9000, down.Body.Expected!.Median.MilliPascalSeconds, 100.0);
    }

    [Fact]
    public void History_of_the_product_makes_the_correction_bolder()
    {
        var run = Batch(6000, 6100);
        var history = Enumerable.Range(0, 3).Select(_ => Bench.AlongSigmoid(9000, 1, 1, 0.6)).ToArray();
        static double Grams(BatchCheck check) => ((BenchAction.Add)((NextStep.Correct)check.Next).Advice.Action).Poured.Grams;
        Assert.True(Grams(Check(new CheckRequest(run, Wanted, Today) { History = [.. history] })) > Grams(Check(run)));
    }

    [Fact]
    public void A_low_pH_comes_first_where_the_thickener_swells_with_it()
    {
        var asked = Wanted with { Acidity = new(Acidity.FromPh(8.5), Acidity.FromPh(9.2)) };
        var check = Check(new CheckRequest(AtPh(8, 6000, 6100), asked, Today));
        Assert.IsType<Verdict.Reject>(check.Verdict);
        Assert.True(Assert.IsType<NextStep.AdjustPh>(check.Next).Raise);
        Assert.IsType<NextStep.AdjustPh>(Check(new CheckRequest(AtPh(8, 6000, 6100), Wanted, Today)).Next);
        Assert.IsType<NextStep.Correct>(Check(new CheckRequest(AtPh(8.8, 6000, 6100), asked, Today)).Next);
        var unread = Check(new CheckRequest(Batch(9000, 9000), asked, Today));
        Assert.IsType<Doubt.PhNotRead>(Assert.IsType<Verdict.Undecided>(unread.Verdict).Why);
    }

    [Fact]
    public void A_pot_that_still_builds_is_no_value_yet()
    {
        var run = Bench.Run(
            9000, Bench.Read(1000), Bench.Dose(1.5), Bench.Read(3000, wait: 200), Bench.Dose(1.0), Bench.Read(6000, wait: 5),
            Bench.Read(6700, wait: 8));
        var check = Check(run);
        Assert.IsType<Verdict.Undecided>(check.Verdict);
        Assert.IsType<NextStep.Wait>(check.Next);
        Assert.Null(check.Body!.Value);
    }

    [Fact]
    public void A_slip_among_repeats_counts_for_next_to_nothing()
    {
        var check = Check(Batch(9000, 9050, 15000, 8980));
        Assert.Equal(9010, check.Body!.Value!.Body.MilliPascalSeconds, 40.0);
        Assert.Equal(3, check.Body.Value.Readings);
        Assert.Contains(new CheckWarning.Outliers(1, 4), check.Warnings);
    }

    [Fact]
    public void Readings_that_disagree_widen_the_uncertainty()
    {
        var run = Bench.Run(9000, Bench.Read(1000), Bench.Dose(2.2), Bench.Read(7800), Bench.Read(10200));
        var check = Check(run with { Repeatability = Percentage.FromPercent(4) });
        var part = Assert.IsType<UncertaintyPart.Repeatability>(check.Body!.Value!.Parts[0]);
        Assert.Equal(ScatterOrigin.Own, part.Origin);
        Assert.Equal(1, part.DegreesOfFreedom, 1e-9);
        Assert.Equal(Math.Log(10200 / 7800.0) / Math.Sqrt(2), part.Scatter.Fraction, 1e-9);
        Assert.IsType<Verdict.Undecided>(check.Verdict);
    }

    [Fact]
    public void A_told_bias_is_taken_out_and_an_untold_one_counts_as_doubt()
    {
        var oil = new CertifiedOil("oil", Viscosity.FromMilliPascalSeconds(1000), Temperature.FromCelsius(25), Percentage.FromPercent(0.3));
        OilReading Read(double value, DateOnly on)
            => new(new(Method.Direct, null), oil, Viscosity.FromMilliPascalSeconds(value), Temperature.FromCelsius(25), on);
        var run = Batch(9000, 9000);
        BatchCheck With(params OilReading[] oils) => Check(new CheckRequest(run, Wanted, Today) { Oils = [.. oils] });

        var told = With([.. Enumerable.Repeat(Read(1150, Today.AddDays(-3)), 6)]);
        Assert.Equal(9000 / 1.15, told.Body!.Value!.Body.MilliPascalSeconds, 1e-6);
        Assert.Equal(told.Drift!.Uncertainty.Percent, Part<UncertaintyPart.Calibration>(told).Size.Percent, 1e-9);
        Assert.DoesNotContain(told.Warnings, w => w is CheckWarning.NeverChecked);

        var untold = With(Read(1030, Today.AddDays(-3)));
        Assert.Equal(9000, untold.Body!.Value!.Body.MilliPascalSeconds, 1e-6);
        Assert.Equal(untold.Drift!.ForVerdicts.Percent, Part<UncertaintyPart.Calibration>(untold).Size.Percent, 1e-9);

        var old = With([.. Enumerable.Repeat(Read(1150, Today.AddDays(-90)), 6)]);
        Assert.Contains(new CheckWarning.CheckOverdue(old.Drift!, Today), old.Warnings);
        Assert.True(Part<UncertaintyPart.Calibration>(old).IsOverdue);
        Assert.Contains(new CheckWarning.NeverChecked(Method.Direct), Check(run).Warnings);
    }

    [Fact]
    public void Temperature_is_corrected_to_the_specification_and_its_doubt_counts()
    {
        var cold = Wanted with { ReferenceTemperature = Temperature.FromCelsius(20) };
        var check = Check(new CheckRequest(Batch(9000, 9000), cold, Today));
        Assert.Equal(9000 * Math.Exp(2000 * ((1 / 293.15) - (1 / 296.15))), check.Body!.Value!.Body.MilliPascalSeconds, 1e-6);
        Assert.True(Part<UncertaintyPart.OfTemperature>(check).Size > Part<UncertaintyPart.OfTemperature>(Check(Batch(9000, 9000))).Size);
        var bare = Check(Bench.Run(9000, Bench.Dose(2), Bench.Read(9000, celsius: null), Bench.Read(9000, celsius: null)));
        Assert.Equal(2 / Math.Sqrt(3) * 2000 / (296.15 * 296.15), Part<UncertaintyPart.UnreadDegrees>(bare).Size.Fraction, 1e-9);
        Assert.Contains(new CheckWarning.NoTemperature(2, Temperature.FromCelsius(23)), bare.Warnings);
    }

    [Fact]
    public void Another_method_and_an_empty_specification_are_refused()
    {
        var krebs = Method.Find("krebs")!;
        Assert.Equal(new CheckRefusal.OtherMethod("P", krebs, Method.Direct), Refused(Wanted with { Method = krebs }));
        Assert.Equal(new CheckRefusal.AsksForNothing("empty"), Refused(new("empty")));
        static CheckRefusal Refused(Specification specification)
            => Assert.IsType<CheckOutcome.Refused>(BatchChecks.Of(new(Batch(9000, 9000), specification, Today))).Reason;
    }

    [Fact]
    public void A_run_belongs_to_a_product_by_what_it_says_or_by_its_name()
    {
        Assert.True(ProductTrend.IsOf("Lantern gel", "batch 3", "lantern gel"));
        Assert.True(ProductTrend.IsOf(null, "Lantern gel 07", "Lantern gel"));
        Assert.False(ProductTrend.IsOf(null, "Lantern gelled", "Lantern gel"));
        Assert.False(ProductTrend.IsOf("Harbour gel", "Lantern gel 07", "Lantern gel"));
        var unread = Bench.Run(9000, Bench.Read(900), Bench.Dose(1));
        var trend = ProductTrend.Of(Wanted with { Name = "test" }, [new("one", Batch(9000, 9100), []), new("two", unread, [])], Today);
        Assert.Equal("one", Assert.Single(trend.Points).Batch);
        Assert.Equal(("two", new ValueGap.NotRead()), Assert.Single(trend.LeftOut));
    }

    /// <summary>
    /// 4000 batches whose true body lies exactly on a limit, two readings each with a stated scatter of 4 % and a thermometer that is off
    /// by 0.2 °C: by its meaning the rule accepts one in twenty of them and rejects as many.
    /// </summary>
    [Fact]
    public void A_batch_on_its_limit_is_accepted_and_rejected_as_often_as_the_rule_says()
    {
        var random = new Random(11);
        const int batches = 4000;
        var (accepted, rejected) = (0, 0);
        for (var i = 0; i < batches; i++)
        {
            var off = Normal.Sample(random, 0, 2000 * 0.2 / (296.15 * 296.15));
            double Reading() => 7650 * Math.Exp(off + Normal.Sample(random, 0, 0.04));
            var run = new Run(new("B"), Mass.FromGrams(100))
            {
                Repeatability = Percentage.FromPercent(4),
                Entries = [Bench.Read(Reading()), Bench.Read(Reading())],
            };
            var verdict = Check(run).Verdict;
            accepted += verdict is Verdict.Accept ? 1 : 0;
            rejected += verdict is Verdict.Reject ? 1 : 0;
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(
            $"on the limit: {100.0 * accepted / batches:0.0} % accepted, {100.0 * rejected / batches:0.0} % rejected"));
        Assert.InRange((double)accepted / batches, 0.035, 0.06);
        Assert.InRange((double)rejected / batches, 0.035, 0.06);
    }

    [Fact]
    public void A_pot_with_two_thickeners_is_corrected_for_body_and_string_together()
    {
        var pair = Bench.Run(9000, Bench.Read(1000), Bench.Dose(1.5), Bench.Read(5000, wait: 300), Bench.Read(5050, wait: 400)) with
        {
            Thickeners = [Bench.Thickener, new("U") { Chemistry = ThickenerChemistry.Associative }],
        };
        var strings = Wanted with { StringLength = new(Length.FromMillimeters(40), Length.FromMillimeters(80)) };
        var check = Check(new CheckRequest(pair, strings, Today));
        Assert.IsType<Verdict.Reject>(check.Verdict);
        var why = Assert.IsType<StepReason.Advised>(Assert.IsType<NextStep.Read>(check.Next).Why).Advice.Why;
        Assert.False(Assert.IsType<AdviceReason.StringNotRead>(why).Ever);

        var drawn = pair with { Entries = pair.Entries.Add(new Entry.Measured(new Reading { StringLength = Length.FromMillimeters(20) })) };
        Assert.IsType<BenchAction.Add>(Assert.IsType<NextStep.Correct>(Check(new CheckRequest(drawn, strings, Today)).Next).Advice.Action);
    }

    /// <summary>A batch by a sheet: base, a dose, then repeats of the settled pot; its bench states its repeatability.</summary>
    private static Run Batch(params double[] readings) => AtPh(null, readings);

    private static Run AtPh(double? ph, params double[] readings)
    {
        Entry[] repeats = [.. readings.Select((r, i) => Bench.Read(r, wait: 300 * (i + 1), ph: ph))];
        return Bench.Run(9000, [Bench.Read(1000), Bench.Dose(1.5), Bench.Read(3000, wait: 600), Bench.Dose(0.7), .. repeats]) with
        {
            Repeatability = Percentage.FromPercent(4),
        };
    }

    private static T Part<T>(BatchCheck check)
        where T : UncertaintyPart
        => Assert.Single(check.Body!.Value!.Parts.OfType<T>());

    private static BatchCheck Check(Run run) => Check(new CheckRequest(run, Wanted, Today));

    private static BatchCheck Check(CheckRequest request) => Assert.IsType<CheckOutcome.Checked>(BatchChecks.Of(request)).Check;
}
