using Viscolog.Core.Advising;
using Viscolog.Core.Limits;
using Viscolog.Core.Measuring;
using Viscolog.Core.Observing;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Core.Tests.Support;
using Xunit;

namespace Viscolog.Core.Tests.Advising;

public sealed class AdvisorTests
{
    [Fact]
    public void A_pot_that_was_never_read_is_to_be_read()
        => Assert.IsType<BenchAction.Measure>(Of(Bench.Run(9000)).Action);

    [Fact]
    public void A_dose_that_was_not_read_is_to_be_read_after_standing()
        => Assert.NotNull(Assert.IsType<BenchAction.Measure>(Of(Bench.Run(9000, Bench.Read(1000), Bench.Dose(0.5))).Action).Standing);

    [Fact]
    public void Far_below_the_band_it_adds_within_step_cap_and_risk()
    {
        var advice = Of(Bench.AlongSigmoid(30000, 0.5));
        var add = Assert.IsType<BenchAction.Add>(advice.Action);
        Assert.InRange(add.Increment.Percent, 0.05, 1.5);
        Assert.True(advice.Body.ChanceOver <= IncrementPolicy.DefaultRisk);
        Assert.Equal(advice.Thickener.DoseNow.Percent + add.Increment.Percent, add.After.Percent, 9);
        Assert.Equal(add.Increment.Percent, add.Poured.Grams, 9);
    }

    [Fact]
    public void Grams_are_whole_steps_of_the_scale()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7) with { ScaleStep = Mass.FromGrams(0.05) };
        var steps = Assert.IsType<BenchAction.Add>(Of(run).Action).Poured.Grams / 0.05;
        Assert.Equal(Math.Round(steps), steps, 9);
    }

    [Fact]
    public void A_smaller_risk_never_asks_for_more()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        double Grams(double risk) => Assert.IsType<BenchAction.Add>(Of(run, risk).Action).Poured.Grams;
        Assert.True(Grams(0.2) <= Grams(1));
        Assert.True(Grams(1) <= Grams(5));
    }

    [Fact]
    public void In_band_it_stops()
    {
        var run = Bench.AlongSigmoid(Bench.Sigmoid(2), 0.5, 0.7, 0.8);
        Assert.IsType<BenchAction.Stop>(Of(run with { Entries = run.Entries.Add(Bench.Read(Bench.Sigmoid(2))) }).Action);
    }

    [Fact]
    public void One_reading_at_the_edge_is_not_in_band()
        => Assert.IsNotType<BenchAction.Stop>(Of(Bench.AlongSigmoid(Bench.Sigmoid(2) / 1.14, 0.5, 0.7, 0.8)).Action);

    [Fact]
    public void A_body_that_one_reading_puts_near_the_band_is_read_again_before_more_goes_in()
    {
        var near = Bench.AlongSigmoid(Bench.Sigmoid(2) / 0.85, 0.5, 0.7, 0.8);
        var advice = Of(near);
        Assert.InRange(advice.Body.ChanceInBand.Percent, 20, 90);
        Assert.IsType<BenchAction.Measure>(advice.Action);

        // Two more that read low tell that it is short.
        var read = Bench.Read(0.94 * Bench.Sigmoid(2));
        Assert.IsType<BenchAction.Add>(Of(near with { Entries = near.Entries.Add(read).Add(read) }).Action);
    }

    [Fact]
    public void A_body_far_below_the_band_is_read_once_a_dose()
        => Assert.IsType<BenchAction.Add>(Of(Bench.AlongSigmoid(30000, 0.5)).Action);

    [Fact]
    public void Over_the_band_it_lets_down_to_the_dose_of_the_aim()
    {
        var run = Bench.AlongSigmoid(Bench.Sigmoid(1.5), 0.5, 0.5, 0.5, 0.5, 0.5);
        var advice = Of(run);
        var letDown = Assert.IsType<BenchAction.LetDown>(advice.Action);
        Assert.InRange(letDown.After.Percent, 1.4, 1.6);
        var pot = run.PotNow().LetDown(letDown.Base);
        Assert.Equal(letDown.After.Percent, pot.DoseOf(Bench.Name).Percent, 3);
    }

    [Fact]
    public void A_let_down_larger_than_the_pot_is_refused()
    {
        var run = Bench.AlongSigmoid(Bench.Sigmoid(0.6), 0.5, 0.5, 0.5, 0.5, 0.5);
        var advice = Of(run);
        Assert.IsType<BenchAction.GiveUp>(advice.Action);
        Assert.True(Assert.IsType<AdviceReason.TooMuchBase>(advice.Why).Base > run.PotNow().Total);
    }

    [Fact]
    public void A_reading_taken_early_is_waited_for()
    {
        var run = Bench.Run(9000, Bench.Read(1000, 60), Bench.Dose(1), Bench.Read(1600, 90), Bench.Dose(1), Bench.Read(2500, 5));
        var wait = Assert.IsType<BenchAction.Wait>(Of(run).Action);
        BenchAction ReadAgain(double part, double body)
            => Of(run with { Entries = run.Entries.Add(Bench.Read(body, 5 + (part * wait.More.TotalSeconds))) }).Action;
        // Read again far too early it still builds; read again when it has stood for twenty minutes it has settled, far below the target.
        Assert.IsType<BenchAction.Wait>(ReadAgain(0.1, 2700));
        Assert.IsType<BenchAction.Add>(ReadAgain(1200 / wait.More.TotalSeconds, 2700));
    }

    [Fact]
    public void Two_readings_that_agree_settle_it_where_as_much_time_lay_between_them_as_before()
    {
        BenchAction At(double second) => Of(Bench.Run(
            9000, Bench.Read(1000, 60), Bench.Dose(1), Bench.Read(1600, 30), Bench.Read(1610, second))).Action;
        Assert.IsType<BenchAction.Add>(At(60));
        Assert.IsType<BenchAction.Wait>(At(45));
    }

    /// <summary>τ = 15 min: the step has risen by a third when it is read for the third time, and nothing may go in.</summary>
    [Fact]
    public void A_step_that_still_rises_is_waited_for_however_long_it_takes()
    {
        static Entry At(double seconds) => Bench.Read(1000 * Math.Exp(1 - Math.Exp(-seconds / 900)), seconds);
        Entry[] start = [Bench.Read(1000), Bench.Dose(1)];
        foreach (Entry[] read in (Entry[][])[[At(20)], [At(20), At(60)], [At(20), At(60), At(300)], [At(20), At(60), At(300), At(900)]])
        {
            Assert.IsType<BenchAction.Wait>(Of(Bench.Run(4000, [.. start, .. read])).Action);
        }

        var settled = Of(Bench.Run(4000, [.. start, At(20), At(60), At(300), At(900), At(2700), At(8000)]));
        Assert.IsType<BenchAction.Add>(settled.Action);
        Assert.InRange(settled.Body.Now!.Median.MilliPascalSeconds, 2500, 2900);
    }

    /// <summary>
    /// A clay that gels over hours is to be come back to later than in a quarter of an hour, and a reading a day later is one.
    /// </summary>
    [Fact]
    public void A_wait_may_be_hours_and_a_reading_a_day_later_counts()
    {
        static Entry At(double hours) => Bench.Read(1000 * Math.Exp(1.5 * (1 - Math.Exp(-Math.Sqrt(hours / 3)))), 3600 * hours);
        var clay = Bench.Run(9000, Bench.Read(1000), Bench.Dose(1), At(0.01), At(0.05), At(0.3), At(1))
            with
        { Thickeners = [Bench.Thickener with { Chemistry = ThickenerChemistry.Clay }] };
        Assert.InRange(Assert.IsType<BenchAction.Wait>(Of(clay).Action).More.TotalHours, 0.9, 24);
        var next = Of(clay with { Entries = clay.Entries.Add(At(4)).Add(At(26)) });
        Assert.InRange(next.Body.Now!.Median.MilliPascalSeconds, 3600, 4700);
    }

    [Fact]
    public void A_body_that_rises_for_hours_without_end_is_named()
    {
        Run Over(params double[] bodies)
            => Bench.Run(9000, [Bench.Read(1000), Bench.Dose(1), .. bodies.Select((b, i) => Bench.Read(b, 900 * Math.Pow(2, i)))]);
        var rises = Assert.Single(Of(Over(2000, 2030, 2100, 2500, 3200)).Warnings.OfType<AdviceWarning.RisesWithoutEnd>());
        Assert.Equal(4, rises.Stood.TotalHours, 6);
        Assert.Equal(28, rises.Rise.Percent, 0.5);
        Assert.Empty(Of(Over(2000, 2030, 2010, 2040, 2020)).Warnings.OfType<AdviceWarning.RisesWithoutEnd>());
    }

    /// <summary>
    /// With the base read and nothing else, the first addition stays under the low end of the usual range, however far the target.
    /// </summary>
    [Fact]
    public void The_first_addition_stays_under_the_low_end_of_the_usual_range()
    {
        var add = Assert.IsType<BenchAction.Add>(Of(Bench.Run(60000, Bench.Read(1000))).Action);
        Assert.InRange(add.After.Percent, 0.3, 0.7);
    }

    /// <summary>
    /// Konjac glucomannan in water (10 1/s, Food Science 24(4) (2003) 23): 0.1, 0.15, 0.2 % give 10.3, 21.6, 83.6 mPa·s, ever steeper.
    /// </summary>
    [Fact]
    public void A_target_is_not_given_up_while_the_readings_still_rise()
    {
        var run = Bench.Run(
            600,
            Bench.Read(1),
            Bench.Dose(0.1),
            Bench.Read(10.33),
            Bench.Dose(0.05),
            Bench.Read(21.55),
            Bench.Dose(0.05),
            Bench.Read(83.64))
            with
        {
            Thickeners = [Bench.Thickener with { UsualRange = new(Dose.FromPercent(0.05), Dose.FromPercent(0.35)) }],
            ScaleStep = Mass.FromGrams(0.001),
        };
        Assert.IsType<BenchAction.Add>(Of(run).Action);
    }

    [Fact]
    public void Nothing_is_given_up_on_the_prior_alone()
    {
        var hopeless = Bench.Run(1e9, Bench.Read(1000), Bench.Dose(0.5), Bench.Read(1100));
        Assert.IsType<BenchAction.Add>(Of(hopeless).Action);
        var read = hopeless with { Entries = [.. hopeless.Entries, Bench.Dose(1), Bench.Read(1150), Bench.Dose(1), Bench.Read(1160)] };
        Assert.IsType<BenchAction.GiveUp>(Of(read).Action);
    }

    /// <summary>850, 700, 560 mPa·s as thickener goes in: it is said, and no more is advised.</summary>
    [Fact]
    public void A_body_that_falls_as_thickener_goes_in_is_said_to()
    {
        var advice = Of(Bench.Run(5000, Bench.Read(850), Bench.Dose(0.5), Bench.Read(700), Bench.Dose(0.5), Bench.Read(560)));
        Assert.Equal(Remedy.FindCause, Assert.IsType<BenchAction.GiveUp>(advice.Action).Remedy);
        var falls = Assert.IsType<AdviceReason.FallsWithDose>(advice.Why);
        Assert.Equal((Quantity.Body, Bench.Name), (falls.Quantity, falls.Thickener));
        Assert.Equal([850.0, 700, 560], falls.Values.Select(v => Math.Round(v)));
        var once = Of(Bench.Run(5000, Bench.Read(850), Bench.Dose(0.5), Bench.Read(700)));
        Assert.IsType<BenchAction.Measure>(once.Action);
        var sure = Of(
            Bench.Run(5000, Bench.Read(850), Bench.Read(845), Bench.Dose(0.5), Bench.Read(400), Bench.Read(405), Bench.Read(402)));
        Assert.Equal(2, Assert.IsType<AdviceReason.FallsWithDose>(sure.Why).Values.Length);
    }

    private static Entry.Measured Lumpy(double body)
        => new(((Entry.Measured)Bench.Read(body)).Reading with { Fault = ObservedFault.Lumps });

    [Fact]
    public void Lumps_are_to_be_stirred_out_and_end_no_run()
    {
        var lumps = Bench.Run(9000, Bench.Read(1000), Bench.Dose(0.5), Lumpy(1300));
        Assert.IsType<AdviceReason.LumpsSeen>(Of(lumps).Why);
        Assert.IsType<BenchAction.Measure>(Of(lumps).Action);

        var gone = lumps with { Entries = lumps.Entries.Add(Bench.Read(1310)) };
        Assert.IsType<BenchAction.Add>(Of(gone).Action);
        Assert.True(Of(gone).Thickener.Limit.Dose.Percent > 4);
    }

    [Fact]
    public void Lumps_that_stirring_does_not_take_out_are_a_limit()
    {
        var advice = Of(Bench.Run(9000, Bench.Read(1000), Bench.Dose(0.5), Lumpy(1300), Lumpy(1300)));
        Assert.Equal(0.5, advice.Thickener.Limit.Dose.Percent, 9);
        Assert.Equal(new LimitReason.Seen(ObservedFault.Lumps), advice.Thickener.Limit.Why);
    }

    [Fact]
    public void A_low_pH_comes_first_and_one_never_read_is_asked_for()
    {
        Assert.Equal(Remedy.RaisePh, Assert.IsType<BenchAction.GiveUp>(Of(Bench.Run(9000, Bench.Read(1000, ph: 6.8))).Action).Remedy);
        Assert.Single(Of(Bench.Run(9000, Bench.Read(1000))).Warnings.OfType<AdviceWarning.PhNotRead>());
        Assert.Empty(Of(Bench.Run(9000, Bench.Read(1000, ph: 9))).Warnings.OfType<AdviceWarning.PhNotRead>());
        var other = Bench.Run(9000, Bench.Read(1000)) with
        {
            Thickeners = [Bench.Thickener with { Chemistry = ThickenerChemistry.Cellulosic }],
        };
        Assert.Empty(Of(other).Warnings.OfType<AdviceWarning.PhNotRead>());
    }

    /// <summary>A 3 % stock: 97 g of water with every 3 g of thickener.</summary>
    [Fact]
    public void The_water_of_a_thin_stock_is_told()
    {
        var stock = Bench.Run(9000, Bench.Read(1000)) with { Thickeners = [Bench.Thickener with { Dilution = new(3, 97) }] };
        var advice = Of(stock);
        var add = Assert.IsType<BenchAction.Add>(advice.Action);
        var told = Assert.Single(advice.Warnings.OfType<AdviceWarning.StockWater>());
        Assert.Equal(0.97 * add.Poured.Grams, told.Water.Grams, 1e-6);
        Assert.Equal(100, told.Pot.Grams, 9);
        Assert.Empty(Of(Bench.Run(9000, Bench.Read(1000))).Warnings.OfType<AdviceWarning.StockWater>());
    }

    /// <summary>Half of a ±1 % band is a quarter of one reading's scatter: four readings can't tell.</summary>
    [Fact]
    public void A_band_narrower_than_the_method_can_tell_is_said_to_be()
    {
        var run = Bench.Run(2000, Bench.Read(1000), Bench.Dose(0.5), Bench.Read(2000), Bench.Read(2030), Bench.Read(1980), Bench.Read(2060))
            with
        { Target = new Target.Value(Viscosity.FromMilliPascalSeconds(2000), Percentage.FromPercent(1)) };
        var advice = Of(run);
        Assert.Equal(Remedy.WiderBand, Assert.IsType<BenchAction.GiveUp>(advice.Action).Remedy);
        Assert.Equal(1, Assert.IsType<AdviceReason.BandTooNarrow>(advice.Why).HalfWidth.Percent, 0.1);
    }

    [Fact]
    public void Flattening_is_a_limit_only_where_readings_show_it()
    {
        Assert.IsType<LimitReason.UsualRange>(Of(Bench.Run(9000, Bench.Read(1000))).Thickener.Limit.Why);
        Assert.IsType<LimitReason.UsualRange>(Of(Bench.AlongSigmoid(90000, 0.5, 0.5)).Thickener.Limit.Why);
        // One dose is no curve, and a curve that bends is not flat before a dose there was read.
        var once = Bench.Run(1500, Bench.Read(1000), Bench.Dose(4.9), Bench.Read(30000));
        var bent = Bench.Run(
            4000,
            Bench.Read(1000),
            Bench.Dose(0.5),
            Bench.Read(2600),
            Bench.Dose(0.5),
            Bench.Read(4200),
            Bench.Dose(0.4),
            Bench.Read(4700));
        Assert.All([once, bent], r => Assert.IsType<LimitReason.UsualRange>(Of(r).Thickener.Limit.Why));
        (double Dose, double Body)[] read = [(0, 409), (0.3, 868), (0.4, 1430), (0.5, 1950), (0.7, 2480), (0.6, 2650), (0.4, 2770)];
        var flat = Bench.Run(
            8000, [.. read.SelectMany(r => r.Dose > 0 ? (Entry[])[Bench.Dose(r.Dose), Bench.Read(r.Body)] : [Bench.Read(r.Body)])])
            with
        { Thickeners = [Bench.Thickener with { UsualRange = new(Dose.FromPercent(0.5), Dose.FromPercent(3)) }] };
        Assert.IsType<LimitReason.Flattens>(Of(flat).Thickener.Limit.Why);
    }

    [Fact]
    public void Beyond_the_usual_range_that_is_what_the_limit_says()
        => Assert.IsType<LimitReason.UsualRange>(
            Of(
                Bench.Run(
                    90000,
                    Bench.Read(1000),
                    Bench.Dose(2),
                    Bench.Read(9000),
                    Bench.Dose(2),
                    Bench.Read(20000),
                    Bench.Dose(1.5),
                    Bench.Read(15000))).Thickener.Limit.Why);

    /// <summary>A factor of 20 mPa·s for each per cent shows 2000 mPa·s at full scale.</summary>
    [Fact]
    public void A_target_beyond_full_scale_is_said_to_be_before_the_run_starts()
    {
        Run At(double target) => Bench.Run(target) with
        {
            Method = MeasuringMethod("rotational"),
            Setup = MethodSetup.None with { PerPercentTorque = Viscosity.FromMilliPascalSeconds(20) },
        };
        Assert.Equal(2000, Beyond(2500).Single().FullScale.MilliPascalSeconds, 9);
        Assert.Empty(Beyond(1500));
        IEnumerable<EvidenceWarning.TargetBeyondScale> Beyond(double target)
            => Of(At(target)).Warnings.OfType<AdviceWarning.OfEvidence>().Select(w => w.Warning)
                .OfType<EvidenceWarning.TargetBeyondScale>();
    }

    private static Method MeasuringMethod(string id) => Method.Find(id)!;

    [Fact]
    public void A_falling_step_is_named_and_read_again()
    {
        var advice = Of(Bench.Run(9000, Bench.Read(1000, 60), Bench.Dose(1), Bench.Read(2100, 5), Bench.Read(1600, 10)));
        Assert.IsType<BenchAction.Measure>(advice.Action);
        Assert.IsType<AdviceReason.Falls>(advice.Why);
    }

    [Theory]
    [InlineData(17, 0, 0.015)]
    [InlineData(700, 0.1, 0.99)]
    [InlineData(40000, 12, 22.25)]
    public void A_single_reading_that_no_thickener_explains_is_to_be_repeated(double body, double least, double most)
    {
        var advice = Of(
            Bench.Run(
                9000,
                Bench.Read(640),
                Bench.Dose(0.7),
                Bench.Read(900),
                Bench.Dose(0.7),
                Bench.Read(1800),
                Bench.Dose(0.3),
                Bench.Read(body)));
        Assert.IsType<BenchAction.Measure>(advice.Action);
        Assert.InRange(Assert.IsType<AdviceReason.Contradicted>(advice.Why).What.Ratio, least, most);
    }

    [Fact]
    public void A_pot_that_is_over_needs_no_waiting()
    {
        var run = Bench.Run(3000, Bench.Read(1000, 60), Bench.Dose(1), Bench.Read(2500, 120), Bench.Dose(1), Bench.Read(9000, 20));
        Assert.IsType<BenchAction.LetDown>(Of(run).Action);
    }

    [Fact]
    public void Readings_far_from_the_reference_temperature_are_not_called_missing()
    {
        var advice = Of(Bench.Run(9000, Bench.Read(1000, celsius: 40)));
        Assert.IsType<BenchAction.Measure>(advice.Action);
        Assert.Equal(23, Assert.IsType<AdviceReason.TooFarFromReference>(advice.Why).Reference.Celsius);
    }

    [Fact]
    public void A_thickener_without_effect_is_warned_of()
        => Assert.Contains(
            Of(Bench.Run(9000, Bench.Read(640), Bench.Dose(1), Bench.Read(641), Bench.Dose(1), Bench.Read(640))).Warnings,
            w => w is AdviceWarning.HardlyThickened);

    [Fact]
    public void A_let_down_finer_than_the_scale_is_not_advised()
    {
        var run = Bench.AlongSigmoid(Bench.Sigmoid(1.5), 0.5, 0.5, 0.5, 0.5, 0.5);
        var grams = Assert.IsType<BenchAction.LetDown>(Of(run).Action).Base.Grams;
        var advice = Of(run with { ScaleStep = Mass.FromGrams(3 * grams) });
        Assert.Equal(Remedy.WeighFiner, Assert.IsType<BenchAction.GiveUp>(advice.Action).Remedy);
        Assert.Equal(3 * grams, Assert.IsType<AdviceReason.BaseTooSmall>(advice.Why).Step.Grams);
    }

    [Fact]
    public void A_dose_far_beyond_the_range_is_no_fault()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 400);
        Assert.Equal(Remedy.SplitPot, Assert.IsType<BenchAction.GiveUp>(Of(run).Action).Remedy);
    }

    [Fact]
    public void A_reading_that_contradicts_the_others_is_to_be_repeated()
    {
        var run = Bench.Run(9000, Bench.Read(1000), Bench.Read(1010), Bench.Read(2600));
        var advice = Of(run);
        Assert.IsType<BenchAction.Measure>(advice.Action);
        Assert.True(Assert.IsType<Contradiction.Unexpected>(Assert.IsType<AdviceReason.Contradicted>(advice.Why).What).Ratio > 1);
    }

    /// <summary>A reading whose figure is absurd tells nothing of the pot, whatever it is: the pot is read again.</summary>
    [Theory]
    [InlineData(900_000_000, Blunder.None)]
    [InlineData(1e15, Blunder.None)]
    [InlineData(61_000, Blunder.DigitTooMany)]
    [InlineData(610, Blunder.DigitTooFew)]
    [InlineData(6.1, Blunder.OtherUnit)]
    [InlineData(6_100_000, Blunder.OtherUnit)]
    public void A_blunder_moves_nothing_and_is_named(double body, Blunder blunder)
    {
        var before = Bench.AlongSigmoid(18_000, 0.5, 0.5, 0.5, 0.5);
        var sound = before with { Entries = [.. before.Entries, Bench.Read(Bench.Sigmoid(2))] };
        var now = Of(sound).Body.Now!.Median.MilliPascalSeconds;
        Assert.Equal(Bench.Sigmoid(2), now, 0.03 * now);
        var advice = Of(sound with { Entries = [.. sound.Entries, Bench.Read(body * now / 6100)] });
        Assert.IsType<BenchAction.Measure>(advice.Action);
        Assert.Equal(blunder, Assert.IsType<AdviceReason.Contradicted>(advice.Why).What.Blunder);
        Assert.Equal(now, advice.Body.Now!.Median.MilliPascalSeconds, 0.03 * now);
    }

    [Fact]
    public void A_single_reading_ten_times_that_of_the_step_before_is_repeated_before_base_goes_in()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.5);
        var entries = run.Entries.Add(Bench.Dose(0.5)).Add(Bench.Read(10 * Bench.Sigmoid(1.5)));
        var why = Assert.IsType<AdviceReason.Contradicted>(Of(run with { Entries = entries }).Why);
        Assert.IsType<Contradiction.Jumped>(why.What);
        Assert.IsType<BenchAction.LetDown>(Of(run with { Entries = entries.Add(Bench.Read(10 * Bench.Sigmoid(1.5))) }).Action);
    }

    [Fact]
    public void A_curve_that_flattens_short_of_the_target_ends_it()
    {
        double Flat(double dose) => 500 * Math.Exp(1.8 * dose / (0.5 + dose));
        var entries = new List<Entry> { Bench.Read(500) };
        foreach (var dose in new[] { 0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5 })
        {
            entries.Add(Bench.Dose(0.5));
            entries.Add(Bench.Read(Flat(dose)));
        }

        var advice = Of(Bench.Run(20000, [.. entries]));
        Assert.IsType<BenchAction.GiveUp>(advice.Action);
        Assert.IsType<LimitReason.Flattens>(advice.Thickener.Limit.Why);
    }

    [Fact]
    public void A_low_pH_comes_first_with_an_alkali_swellable_thickener()
    {
        var advice = Of(Bench.Run(9000, Bench.Read(1000, ph: 6.8)));
        Assert.IsType<BenchAction.GiveUp>(advice.Action);
        Assert.Equal(Remedy.RaisePh, ((BenchAction.GiveUp)advice.Action).Remedy);
        Assert.Equal(6.8, Assert.IsType<AdviceReason.LowPh>(advice.Why).Ph);
    }

    /// <summary>pH 7.5: below it an alkali-swellable thickener hardly swells.</summary>
    [Theory]
    [InlineData(7.45, true)]
    [InlineData(7.5, false)]
    public void From_pH_7_5_on_a_curve_means_something(double ph, bool isTooLow)
    {
        var run = Bench.Run(9000, Bench.Read(1000, ph: ph), Bench.Dose(0.5), Bench.Read(1150, ph: ph));
        Assert.Equal(isTooLow, Of(run).Action is BenchAction.GiveUp { Remedy: Remedy.RaisePh });
        Assert.Equal(isTooLow, Studied.Of(new(run)).Evidence.Warnings.Any(w => w is EvidenceWarning.LowPh));
        Assert.IsType<BenchAction.Add>(
            Of(run with { Thickeners = [Bench.Thickener with { Chemistry = ThickenerChemistry.Associative }] }).Action);
    }

    [Fact]
    public void A_pot_too_stiff_to_stir_limits_the_dose()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7, 0.6) with { TooStiff = Viscosity.FromMilliPascalSeconds(12000) };
        var limit = Of(run).Thickener.Limit;
        Assert.IsType<LimitReason.TooStiff>(limit.Why);
        Assert.True(limit.Dose.Percent < 3);
    }

    [Fact]
    public void A_fault_that_was_seen_limits_the_dose()
    {
        var run = Bench.AlongSigmoid(30000, 0.5, 0.7, 0.9);
        Run Seen(int step, string? voided = null)
        {
            var place = Steps.Of(run)[step].Readings[0].Entry;
            var reading = ((Entry.Measured)run.Entries[place]).Reading with { Fault = ObservedFault.Weeping };
            return run with
            {
                Entries = run.Entries.Insert(place + 1, new Entry.Measured(reading with { Value = null }) { VoidReason = voided }),
            };
        }

        var limit = Of(Seen(3)).Thickener.Limit;
        Assert.Equal(Steps.Of(run)[3].Pot.DoseOf(Bench.Name).Percent, limit!.Dose.Percent, 9);
        Assert.Equal(new LimitReason.Seen(ObservedFault.Weeping), limit.Why);
        Assert.IsType<BenchAction.GiveUp>(Of(Seen(3)).Action);
        Assert.Equal(limit, Assert.IsType<AdviceReason.LimitInTheWay>(Of(Seen(3)).Why).Limit);
        Assert.Equal(Of(run).Thickener.Limit, Of(Seen(3, "stirred out")).Thickener.Limit);
        Assert.Equal(Of(run).Thickener.Limit, Of(Seen(0)).Thickener.Limit);
    }

    [Fact]
    public void An_increment_under_the_scale_asks_for_pre_dilution()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7) with { ScaleStep = Mass.FromGrams(0.3) };
        Assert.Contains(Of(run).Warnings, w => w is AdviceWarning.FewScaleSteps);
    }

    [Fact]
    public void Pre_diluted_thickener_is_weighed_with_its_water()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        var cut = run with
        {
            Thickeners = [Bench.Thickener with { Dilution = new(1, 1) }],
            Entries = [.. run.Entries.Select(e => e is Entry.Dosed d ? d with { Poured = Mass.FromGrams(2 * d.Poured.Grams) } : e)],
        };
        var (neat, diluted) = ((BenchAction.Add)Of(run).Action, (BenchAction.Add)Of(cut).Action);
        Assert.Equal(2 * neat.Poured.Grams, diluted.Poured.Grams, 0.021);
    }

    [Fact]
    public void Without_a_target_there_is_a_study_but_no_advice()
    {
        var study = Studied.Of(new(Bench.Run(9000, Bench.Read(1000)) with { Target = null }));
        Assert.Null(study.Advice);
        Assert.IsType<NoAdvice.NoTarget>(study.NoAdvice);
        Assert.NotEmpty(study.Curve.Curve);
    }

    [Fact]
    public void Advice_repeats()
    {
        var run = Bench.AlongSigmoid(9000, 0.5, 0.7);
        Assert.Equal(Of(run).Action, Of(run).Action);
    }

    private static Advice Of(Run run, double? risk = null)
        => Studied.Of(new(run) { Risk = risk is { } percent ? Percentage.FromPercent(percent) : IncrementPolicy.DefaultRisk }).Advice!;
}
