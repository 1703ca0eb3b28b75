using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.MaterialFiles;
using Viscolog.Store.Copy;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Pattern;
using Viscolog.Tui.RunHeaders;
using Viscolog.Typing;

namespace Viscolog.Tests.Tui;

public sealed class BenchStepsTests
{
    [Fact]
    public void A_reading_takes_stir_and_wait_from_the_clock()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Poured("Sail", Mass.FromGrams(0.9)));
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(12);
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(47.4);
        trial.Do(new BenchEvent.Typed("5200", "", "smooth"));
        Assert.Null(trial.State.Error);
        Assert.Equal(
            (12.0, 47.0, "smooth"),
            (trial.Last.Reading!.Stir!.Value.TotalSeconds, trial.Last.Reading.Wait!.Value.TotalSeconds, trial.Last.Note));
        Assert.Equal(trial.Now, trial.Last.Time);
        Assert.Equal("saved: 5\u2009200 mPa·s", trial.State.Said);
    }

    [Fact]
    public void What_does_not_go_into_the_pot_leaves_the_clock_running()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Poured("Sail", Mass.FromGrams(0.9)));
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(12);
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(40);
        var clock = trial.State.Clock;
        BenchEvent[] events =
        [
            new BenchEvent.Typed("5200", "", ""), new BenchEvent.Typed("", "", "smooth"), new BenchEvent.TakenOut(Mass.FromGrams(1)),
            new BenchEvent.Voided(trial.State.ChosenPlace, "a slip", ""), new BenchEvent.ReadBeside(new(22.5, null, null, null)),
        ];
        foreach (var @event in events)
        {
            trial.Do(@event);
            Assert.Null(trial.State.Error);
            Assert.Equal(clock, trial.State.Clock);
        }

        trial.Now += TimeSpan.FromSeconds(60);
        trial.Do(new BenchEvent.Typed("5400", "", ""));
        Assert.Equal((12.0, 100.0), (trial.Last.Reading!.Stir!.Value.TotalSeconds, trial.Last.Reading.Wait!.Value.TotalSeconds));
    }

    [Fact]
    public void What_goes_into_the_pot_begins_the_clock_anew()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        var five = Mass.FromGrams(5);
        BenchEvent[] events = [new BenchEvent.Poured("Sail", five), new BenchEvent.LetDown(five), new BenchEvent.Watered(five)];
        foreach (var @event in events)
        {
            trial.Do(new BenchEvent.Stir());
            Assert.True(trial.State.Clock.IsStirring);
            trial.Do(@event);
            Assert.Equal(new BenchClock { Due = TimeSpan.FromSeconds(60) }, trial.State.Clock);
        }
    }

    [Fact]
    public void Every_event_is_answered()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Advise();
        var gram = Mass.FromGrams(1);
        BenchEvent[] events =
        [
            new BenchEvent.Typed("5200", "", ""),
            new BenchEvent.Corrected(),
            new BenchEvent.TookAdvised(),
            new BenchEvent.Poured("Sail", gram),
            new BenchEvent.LetDown(gram), new BenchEvent.Watered(gram), new BenchEvent.TakenOut(gram), new BenchEvent.Stir(),
            new BenchEvent.ReadBeside(new(null, 8, null, null)), new BenchEvent.Voided(0, "a slip", ""),
            new BenchEvent.Aimed(null, Percentage.FromPercent(1)), new BenchEvent.Moved(-1),
            new BenchEvent.Logged(
                trial.State.Run, new BenchChange.Header("it", trial.State.Run.File, trial.State.Run.File), ChangeWay.First),
            new BenchEvent.Pasted(["5000", "5100"]),
            new BenchEvent.Copied(),
            new BenchEvent.Correcting(),
            new BenchEvent.RunCorrected(trial.State.Run.File.WithoutRows()),
            new BenchEvent.PaperCalled(),
            new BenchEvent.Told("written"),
            new BenchEvent.TakenBack(),
            new BenchEvent.SaidAgain(),
            new BenchEvent.Explained(),
            new BenchEvent.StoodFor(TimeSpan.FromSeconds(3)),
            new BenchEvent.ClockJumped(TimeSpan.FromHours(1)), new BenchEvent.Leaving(), new BenchEvent.NotLogged("no room"),
            new BenchEvent.Advised(new(null, "too few readings", null)), new BenchEvent.Ticked(),
            new BenchEvent.Heard(new Viscolog.Feeds.FeedEvent.Told("it", Viscolog.Feeds.FeedState.Lost, "gone")),
            new BenchEvent.Called(BenchForms.Dose), new BenchEvent.Charted(), new BenchEvent.Checked(),
        ];
        var cases = typeof(BenchEvent).GetNestedTypes(System.Reflection.BindingFlags.NonPublic);
        Assert.Equal(cases.ToHashSet(), events.Select(e => e.GetType()).ToHashSet());
        var state = trial.State with { Clock = new() { StirBegan = trial.Now, StirEnded = trial.Now, Due = TimeSpan.Zero } };
        Assert.All(events, e =>
        {
            var step = BenchSteps.Next(state, e, trial.Now);
            Assert.True(step.State != state || !step.Effects.IsEmpty, e.ToString());
        });
    }

    [Fact]
    public void A_typed_wait_goes_before_the_clock()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Poured("Sail", Mass.FromGrams(0.9)));
        trial.Do(new BenchEvent.Typed("5200,5", "90", ""));
        Assert.Equal(90, trial.Last.Reading!.Wait!.Value.TotalSeconds);
    }

    [Theory]
    [InlineData("12a", "", "read the unit 'a', expected mPa·s, cP, Pa·s, P, mm²/s, cSt")]
    [InlineData("1 20", "", "read '1 20', expected a number in mPa·s, at least 0.001, such as 1450 or 0.84")]
    [InlineData("1200 000", "", "read '1200 000', expected a number in mPa·s, at least 0.001, such as 1450 or 0.84")]
    [InlineData("1,200.5", "", "read '1,200.5', expected a number in mPa·s, at least 0.001, such as 1450 or 0.84")]
    [InlineData("-4", "", "read '-4', expected a number in mPa·s, at least 0.001")]
    [InlineData("", "", "type a reading in mPa·s, then Enter")]
    [InlineData("5200", "soon", "read 'soon', expected a number in s, 0 or more, such as 1450 or 0.84")]
    [InlineData(
        "5200",
        "20",
        "at the last reading the pot had stood 180 s since the last addition; enter the total standing time")]
    public void What_can_not_be_taken_is_said_and_nothing_is_saved(string reading, string wait, string error)
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Typed(reading, wait, ""));
        Assert.Equal(error, trial.State.Error);
        Assert.DoesNotContain(trial.Effects, e => e is BenchEffect.Log);
    }

    [Theory]
    [InlineData("46000", "10 times what was expected (a digit too many?): Enter keeps it, Esc corrects")]
    [InlineData("460", "1/10 of what was expected (a digit too few?): Enter keeps it, Esc corrects")]
    [InlineData("4.6", "1/1\u2009000 of what was expected (Pa·s for mPa·s?): Enter keeps it, Esc corrects")]
    public void A_reading_that_nothing_led_to_expect_is_asked_about_and_kept_when_said_again(string reading, string question)
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Advise();
        var rows = trial.State.Run.Rows.Length;
        trial.Do(new BenchEvent.Typed(reading, "240", ""));
        Assert.Equal(question, trial.State.Error);
        Assert.Equal(rows, trial.State.Run.Rows.Length);
        trial.Do(new BenchEvent.Typed(reading, "240", ""));
        Assert.Null(trial.State.Error);
        Assert.Equal(rows + 1, trial.State.Run.Rows.Length);
        trial.Advise();
        Assert.IsType<BenchAction.Measure>(trial.State.Advice!.Advice!.Action);
    }

    [Fact]
    public void A_reading_asked_about_and_corrected_leaves_nothing_behind()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Advise();
        var rows = trial.State.Run.Rows.Length;
        trial.Do(new BenchEvent.Typed("46000", "240", ""));
        trial.Do(new BenchEvent.Corrected());
        Assert.Equal((null, "not saved; type the reading as it was"), (trial.State.Error, trial.State.Said));
        trial.Do(new BenchEvent.Typed("46000", "240", ""));
        Assert.NotNull(trial.State.Error);
        trial.Do(new BenchEvent.Typed("4600", "240", ""));
        Assert.Null(trial.State.Error);
        Assert.Equal(rows + 1, trial.State.Run.Rows.Length);
    }

    [Fact]
    public void The_advised_grams_go_in_with_one_key_and_the_clock_begins_anew()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.TookAdvised());
        Assert.Equal("the advice is being worked out; one moment", trial.State.Error);
        trial.Advise();
        var add = Assert.IsType<BenchAction.Add>(trial.State.Advice!.Advice!.Action);
        trial.Do(new BenchEvent.TookAdvised());
        Assert.Equal((add.Poured, "Sail"), (trial.Last.Dosed!.Poured, trial.Last.Dosed.Thickener));
        Assert.Equal((add.Standing, null), (trial.State.Clock.Due, trial.State.Clock.StirBegan));
        Assert.True(trial.State.IsWorking);
    }

    [Fact]
    public void The_bell_rings_once_when_it_is_time_to_read()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Poured("Sail", Mass.FromGrams(0.9)));
        trial.Do(new BenchEvent.Stir());
        trial.Do(new BenchEvent.Stir());
        for (var i = 0; i < 100; i++)
        {
            trial.Now += TimeSpan.FromSeconds(1);
            trial.Do(new BenchEvent.Ticked());
            Assert.Equal(i + 1 >= 60 ? 1 : 0, trial.Effects.Count(e => e is Ring<BenchEvent>));
        }

        Assert.Equal("stirred 0 s · standing 01:40 · read now", trial.State.Clock.Words(trial.Now));
    }

    [Fact]
    public void A_void_keeps_the_row_and_the_right_one_stands_behind_it()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Moved(-1));
        var place = trial.State.ChosenPlace;
        trial.Do(new BenchEvent.Voided(place, "a digit too many", "4570.5"));
        var rows = trial.State.Run.File.Contents().ToList();
        Assert.Equal("a digit too many", rows[place].Void);
        Assert.True(rows[place + 1].Replaces);
        Assert.Equal(4570.5, ((Core.Measuring.InstrumentValue.Direct)rows[place + 1].Reading!.Value!).Viscosity.MilliPascalSeconds);
        trial.Do(new BenchEvent.Voided(place + 1, " ", ""));
        Assert.Equal("say why the entry is void; it stays in sight", trial.State.Error);
    }

    [Fact]
    public void The_clock_is_taken_up_where_the_log_has_it()
    {
        var run = BenchTrial.OfSample("lantern-gel-07").State.Run;
        var began = new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);
        var opened = BenchSteps.Open(run with { Clock = new(began, began.AddSeconds(15)) }, []).State;
        Assert.Equal("stirred 15 s · standing 2:10:00", opened.Clock.Words(began.AddSeconds(15).AddMinutes(130)));
        var stirring = BenchSteps.Open(run with { Clock = new(began, null) }, []).State;
        Assert.Equal("stirring 00:40 (F3 ends it)", stirring.Clock.Words(began.AddSeconds(40)));
        Assert.Equal(new BenchChange.Clock("stirring", StirTimes.None, new(began, null)), stirring.History.Said.Peek());
        Assert.Equal(new StirTimes(began, null), Assert.IsType<BenchChange.Clock>(opened.History.Said.Peek()).Before);
    }

    [Theory]
    [InlineData(-3600)]
    [InlineData(3600)]
    public void A_jump_of_the_computers_clock_is_asked_about_while_the_clock_runs(int seconds)
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        var by = TimeSpan.FromSeconds(seconds);
        trial.Do(new BenchEvent.ClockJumped(by));
        Assert.Empty(trial.Effects.OfType<Ask<BenchEvent>>());
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(10);
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(30) + by;
        trial.Do(new BenchEvent.ClockJumped(by));
        var form = Assert.Single(trial.Effects.OfType<Ask<BenchEvent>>()).Form;
        Assert.Contains($"It went {(seconds < 0 ? "back" : "forward")} by 1:00:00", form.About, StringComparison.Ordinal);
        Assert.Equal(0, form.Read(["soon"]).Field);
        trial.Do(form.Read(["0:30"]).Value!);
        Assert.StartsWith("stirred 10 s · standing 00:30", trial.State.Clock.Words(trial.Now), StringComparison.Ordinal);
        trial.Do(new BenchEvent.TakenBack());
        Assert.Equal(by.TotalSeconds + 30, trial.State.Clock.Standing(trial.Now)!.Value.TotalSeconds);
    }

    [Fact]
    public void A_clock_that_is_ahead_is_asked_about_once()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Stir());
        trial.Do(new BenchEvent.Stir());
        trial.Now -= TimeSpan.FromHours(2);
        trial.Do(new BenchEvent.Ticked());
        trial.Do(new BenchEvent.Ticked());
        Assert.Single(trial.Effects.OfType<Ask<BenchEvent>>());
    }

    [Fact]
    public void What_was_said_is_taken_back_step_by_step_and_said_again()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        var before = trial.State.Run.Rows.Length;
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(20);
        trial.Do(new BenchEvent.Stir());
        var clock = trial.State.Clock.Times;
        trial.Do(new BenchEvent.Poured("Sail", Mass.FromGrams(0.9)));
        trial.Do(new BenchEvent.Typed("5200", "60", ""));
        trial.Do(new BenchEvent.TakenBack());
        Assert.Equal("undone: 5\u2009200 mPa·s (Ctrl+Y redoes it)", trial.State.Said);
        trial.Do(new BenchEvent.TakenBack());
        Assert.Equal(clock, trial.State.Clock.Times);
        string?[] voids = [.. trial.State.Run.File.Contents().Skip(before).Select(r => r.Void)];
        Assert.Equal([BenchChange.TakenBack, BenchChange.TakenBack], voids, StringComparer.Ordinal);
        trial.Do(new BenchEvent.TakenBack());
        Assert.True(trial.State.Clock.IsStirring);
        trial.Do(new BenchEvent.SaidAgain());
        trial.Do(new BenchEvent.SaidAgain());
        trial.Do(new BenchEvent.SaidAgain());
        Assert.Equal("redone: 5\u2009200 mPa·s", trial.State.Said);
        Assert.All(trial.State.Run.File.Contents().Skip(before), r => Assert.Null(r.Void));
        trial.Do(new BenchEvent.SaidAgain());
        Assert.Equal("nothing was undone that could be redone", trial.State.Said);
        for (var i = 0; i < 20; i++)
        {
            trial.Do(new BenchEvent.TakenBack());
        }

        Assert.Equal("nothing is left to undo", trial.State.Said);
        Assert.All(trial.State.Run.File.Contents(), r => Assert.NotNull(r.Void));
    }

    [Fact]
    public void A_void_is_lifted_from_the_same_form_which_names_its_row()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Voided(5, "typed wrong", "4500"));
        trial.Do(new BenchEvent.Moved(-1));
        var form = BenchForms.Void(trial.State)!;
        Assert.StartsWith("Entry 6 of 7: 4\u2009460 mPa·s, void: typed wrong", form.About, StringComparison.Ordinal);
        trial.Do(form.Read([""]).Value!);
        Assert.Equal([null, BenchChange.TakenBack], trial.State.Run.File.Contents().Skip(5).Select(r => r.Void), StringComparer.Ordinal);
        trial.Do(new BenchEvent.TakenBack());
        Assert.Equal(["typed wrong", null], trial.State.Run.File.Contents().Skip(5).Select(r => r.Void), StringComparer.Ordinal);
        trial.Do(new BenchEvent.TakenBack());
        Assert.Equal([null, BenchChange.TakenBack], trial.State.Run.File.Contents().Skip(5).Select(r => r.Void), StringComparer.Ordinal);
    }

    [Fact]
    public void After_a_stop_nothing_counts_down()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Advise();
        var said = trial.State.Advice!;
        trial.Do(new BenchEvent.Poured("Sail", Mass.FromGrams(0.9)));
        trial.Do(new BenchEvent.Stir());
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(20);
        Assert.Contains("read in", trial.State.Clock.Words(trial.Now), StringComparison.Ordinal);
        trial.Answer(said with { Advice = said.Advice! with { Action = new BenchAction.Stop() } });
        Assert.DoesNotContain("read", trial.State.Clock.Words(trial.Now), StringComparison.Ordinal);
    }

    [Fact]
    public void Several_pasted_lines_are_one_question_and_one_change()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        var before = trial.State.Run.Rows.Length;
        trial.Do(new BenchEvent.Pasted(["4 500\t200", "4510;230;still", "4.52 Pa.s"]));
        Assert.Equal("3 readings: Enter saves all, Esc drops them", trial.State.Error);
        Assert.Equal(before, trial.State.Run.Rows.Length);
        trial.Do(new BenchEvent.Corrected());
        Assert.Equal("nothing that was pasted is saved", trial.State.Said);
        trial.Do(new BenchEvent.Pasted(["4 500\t200", "4510;230;still", "4.52 Pa.s"]));
        trial.Do(new BenchEvent.Typed("", "", ""));
        Assert.Equal("saved: 3 readings", trial.State.Said);
        var rows = trial.State.Run.File.Contents().Skip(before).ToList();
        Assert.Equal(
            [(4500.0, 200.0, null), (4510, 230, "still"), (4520, null, null)],
            rows.Select(r => (r.Reading!.Value!.Shown, r.Reading.Wait?.TotalSeconds, r.Note)));
        trial.Do(new BenchEvent.TakenBack());
        Assert.All(trial.State.Run.File.Contents().Skip(before), r => Assert.NotNull(r.Void));
        trial.Do(new BenchEvent.Pasted(["4500", "much"]));
        Assert.StartsWith("line 2 of 2: read 'much'", trial.State.Error, StringComparison.Ordinal);
        Assert.Empty(trial.State.Pasted);
    }

    [Fact]
    public void What_was_read_beside_goes_with_the_next_reading_alone()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.ReadBeside(new(22.5, 8.8, 14, ObservedFault.Lumps)));
        trial.Do(new BenchEvent.Typed("4400", "200", "stirred by hand"));
        Assert.Equal(
            (22.5, 8.8, 14.0, "stirred by hand", ObservedFault.Lumps),
            (
                trial.Last.Reading!.Temperature!.Value.Celsius,
                trial.Last.Reading.Acidity!.Value.Ph,
                trial.Last.Reading.StringLength!.Value.Millimeters,
                trial.Last.Note,
                trial.Last.Reading.Fault!.Value));
        trial.Do(new BenchEvent.Typed("4410", "260", ""));
        Assert.Null(trial.Last.Reading!.Temperature);
    }

    [Fact]
    public void Another_target_is_stated_and_asks_anew()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        var asked = trial.Effects.OfType<BenchEffect.Advise>().Count();
        trial.Do(new BenchEvent.Aimed(new Target.Value(Viscosity.FromMilliPascalSeconds(7000), null), Percentage.FromPercent(1)));
        Assert.Equal(
            (7000.0, 1.0, asked + 1),
            (
                trial.State.Run.File.Run.Target!.Band.Aim.MilliPascalSeconds,
                trial.State.Risk.Percent,
                trial.Effects.OfType<BenchEffect.Advise>().Count()));
        Assert.Equal(6, trial.State.Run.Rows.Length);
    }

    [Theory]
    [InlineData(0, "0.9", "", "")]
    [InlineData(1, "", "", "")]
    [InlineData(1, "1", "2", "")]
    [InlineData(2, "", "x", "")]
    public void The_form_of_what_went_in_takes_one_amount(int outcome, params string[] texts)
    {
        var answer = BenchForms.Change(BenchTrial.OfSample("lantern-gel-07").State).Read(texts);
        Assert.Equal(outcome == 0, answer.Value is BenchEvent.LetDown);
        Assert.Equal(outcome, answer.Error is null ? 0 : answer.Error == "one of the three" ? 1 : 2);
    }

    [Theory]
    [InlineData("1.45 Pa.s", 1450)]
    [InlineData("1,45 Pa·s", 1450)]
    [InlineData("1450cP", 1450)]
    [InlineData("14.5 P", 1450)]
    [InlineData("1 cSt", 1.06)]
    public void A_viscosity_may_be_typed_in_another_unit(string typed, double milliPascalSeconds)
    {
        var run = BenchTrial.OfSample("lantern-gel-07").State.Run.File.Run;
        var value = BenchValue.Read(typed, run with { Base = new("Ledge", Density.FromGramsPerMilliliter(1.06)) }, out var error);
        Assert.Null(error);
        Assert.Equal(milliPascalSeconds, Assert.IsType<Core.Measuring.InstrumentValue.Direct>(value).Viscosity.MilliPascalSeconds);
    }

    [Theory]
    [InlineData("1450 g", "read the unit 'g', expected mPa·s, cP, Pa·s, P, mm²/s, cSt")]
    [InlineData("1450 x", "read the unit 'x', expected mPa·s, cP, Pa·s, P, mm²/s, cSt")]
    [InlineData("1 cSt", "read the unit 'cSt'; without a density it can't be converted to mPa·s")]
    [InlineData("Pa.s", "read 'Pa.s', expected a number in mPa·s, at least 0.001, such as 1450 or 0.84")]
    public void A_unit_that_does_not_fit_is_named(string typed, string said)
    {
        var run = BenchTrial.OfSample("lantern-gel-07").State.Run.File.Run with { Base = new("Ledge") };
        Assert.Null(BenchValue.Read(typed, run, out var error));
        Assert.Equal(said, error);
    }

    [Fact]
    public void Torque_is_typed_with_its_speed_which_then_stays()
    {
        var trial = new BenchTrial(RunFiles.FileText.Read(
            "# base: Gable\n# base_g: 120\n# thickener: TA\n# method: rotational\n"
            + "# factor_mpas_per_pct: 100\nadded_g,wait_s,torque_pct,rpm\n"));
        Assert.Equal("%@rpm", BenchValue.Unit(trial.State.Run.File.Run));
        trial.Do(new BenchEvent.Typed("35.2", "", ""));
        Assert.Equal("type torque and speed, such as 35.2@20 for 35.2 % at 20 rpm", trial.State.Error);
        trial.Do(new BenchEvent.Typed("35,2@20", "", ""));
        trial.Do(new BenchEvent.Typed("36", "", ""));
        Assert.Equal(new Core.Measuring.InstrumentValue.Torque(Percentage.FromPercent(36), 20), trial.Last.Reading!.Value);
        trial.Do(new BenchEvent.Typed("36@x", "", ""));
        Assert.Contains("1/min", trial.State.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rotational; factor_mpas_per_pct=100", null)]
    [InlineData("bench viscometer", null)]
    [InlineData("cup", "read 'method: cup', expected")]
    [InlineData("slump; height=3", "after the method's name, 'key=value' with one of factor_mpas_per_pct")]
    [InlineData("slump; cylinder_height_mm", "in mm")]
    public void A_new_run_takes_its_method_with_what_that_needs(string typed, string? said)
    {
        var own = new MaterialRow(
            new Core.Checking.Material.OfMethod(new(
                "bench viscometer",
                Core.Measuring.Method.Find("rotational")!,
                Percentage.FromPercent(2))),
            ImmutableSortedDictionary<string,
            string>.Empty);
        var form = RunForm.New([own], null);
        var answer = form.Read(RunFormTests.Typed(form, ("name", "gel"), ("base", "Gable"), ("base in the pot", "120"), ("thickener", "TA"),
            ("target", "9000"), ("method", typed)));
        Assert.Equal(said is null, answer.Value is not null);
        if (said is not null)
        {
            Assert.Contains(said, answer.Error, StringComparison.Ordinal);
            Assert.Equal("method", form.Fields[answer.Field].Label);
            return;
        }

        Assert.Equal("rotational", answer.Value!.Run.MethodInForce.Id);
        Assert.Equal(typed[0] == 'b' ? 2 : 3, answer.Value.Run.RepeatabilityInForce.Percent);
    }

    [Fact]
    public void Volumes_go_in_where_the_density_is_known()
    {
        var trial = new BenchTrial(RunFiles.FileText.Read(
            "# base: Gable\n# base_g: 120\n# base_density_g_ml: 1.06\n# thickener: TA; density_g_ml=1.05\n"
            + "# thickener: TB\nthickener,added_g,wait_s,viscosity_mpas\n,,60,850\n"));
        Assert.Equal(2.1, Assert.IsType<BenchEvent.Poured>(BenchForms.Dose(trial.State).Read(["TA", "2 mL"]).Value).Grams.Grams, 12);
        Assert.Contains("without a density", BenchForms.Dose(trial.State).Read(["TB", "2 mL"]).Error, StringComparison.Ordinal);
        Assert.Equal(
            236.5882365 * 1.06,
            Assert.IsType<BenchEvent.LetDown>(BenchForms.Change(trial.State).Read(["1 US cup", "", ""]).Value).Grams.Grams,
            9);
        Assert.Equal(
            23,
            Assert.IsType<BenchEvent.ReadBeside>(BenchForms.Beside(trial.State).Read(["73.4 F", "", "", ""]).Value).Readings.TempC);
    }

    [Fact]
    public void The_first_dose_comes_with_its_cautions()
    {
        var trial = new BenchTrial(RunFiles.FileText.Read(
            "# base: Gable\n# base_g: 120\n# thickener: TA; chemistry=alkali-swellable; range_pct=1-5\n"
            + "# target_mpas: 9000\nadded_g,wait_s,viscosity_mpas\n,60,850\n"));
        trial.Advise();
        Assert.Contains("goggles and gloves", BenchForms.Dose(trial.State).About, StringComparison.Ordinal);
        trial.Do(new BenchEvent.TookAdvised());
        var form = Assert.Single(trial.Effects.OfType<Ask<BenchEvent>>()).Form;
        Assert.Contains("goggles and gloves", form.About, StringComparison.Ordinal);
        trial.Do(form.Read([.. form.Fields.Select(f => f.Text)]).Value!);
        Assert.NotNull(trial.Last.Dosed);
        trial.Advise();
        Assert.Equal("", BenchForms.Cautions(trial.State));
    }

    [Fact]
    public void The_dose_form_offers_what_is_advised()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Advise();
        var form = BenchForms.Dose(trial.State);
        Assert.Equal("", form.About);
        var add = (BenchAction.Add)trial.State.Advice!.Advice!.Action;
        Assert.Equal(
            ["Sail", Viscolog.Tables.FileNumbers.Show(add.Poured.Grams)],
            form.Fields.Select(f => f.Text),
            StringComparer.Ordinal);
        Assert.Equal(new BenchEvent.Poured("Sail", Mass.FromGrams(0.7)), form.Read(["Sail", "0,7"]).Value);
        Assert.Equal((0, "the run has Sail"), (form.Read(["TU", "1"]).Field, form.Read(["TU", "1"]).Error));
    }
}
