using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Tui;

namespace Viscolog.Tests.Tui;

public sealed class BenchStepsTests
{
    [Fact]
    public void A_reading_takes_stir_and_wait_from_the_clock()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Poured("SW-1", Mass.FromGrams(0.9)));
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(12);
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(47.4);
        trial.Do(new BenchEvent.Typed("5200", "", "smooth"));
        Assert.Null(trial.State.Error);
        Assert.Equal((12.0, 47.0, "smooth"), (trial.Last.Reading!.Stir!.Value.TotalSeconds, trial.Last.Reading.Wait!.Value.TotalSeconds, trial.Last.Note));
        Assert.Equal(trial.Now, trial.Last.Time);
        Assert.Equal("saved: 5200 mPa·s", trial.State.Said);
    }

    [Fact]
    public void A_typed_wait_goes_before_the_clock()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Poured("SW-1", Mass.FromGrams(0.9)));
        trial.Do(new BenchEvent.Typed("5200,5", "90", ""));
        Assert.Equal(90, trial.Last.Reading!.Wait!.Value.TotalSeconds);
    }

    [Theory]
    [InlineData("12a", "", "read '12a', expected a number in mPa·s, at least 0.001, such as 1450 or 0.84")]
    [InlineData("1,200.5", "", "read '1,200.5', expected a number in mPa·s, at least 0.001, such as 1450 or 0.84")]
    [InlineData("-4", "", "read '-4', expected a number in mPa·s, at least 0.001")]
    [InlineData("", "", "type a reading in mPa·s, then Enter")]
    [InlineData("5200", "soon", "read 'soon', expected a number in s, 0 or more, such as 1450 or 0.84")]
    [InlineData("5200", "20", "at the last reading the pot had stood 150 s since the last thing went in; type the whole standing time into wait")]
    public void What_can_not_be_taken_is_said_and_nothing_is_saved(string reading, string wait, string error)
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Typed(reading, wait, ""));
        Assert.Equal(error, trial.State.Error);
        Assert.DoesNotContain(trial.Effects, e => e is BenchEffect.AddRow);
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
        Assert.Equal((add.Poured, "SW-1"), (trial.Last.Dosed!.Poured, trial.Last.Dosed.Thickener));
        Assert.Equal((add.Standing, null), (trial.State.Clock.Due, trial.State.Clock.StirBegan));
        Assert.True(trial.State.IsWorking);
    }

    [Fact]
    public void The_bell_rings_once_when_it_is_time_to_read()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Poured("SW-1", Mass.FromGrams(0.9)));
        trial.Do(new BenchEvent.Stir());
        trial.Do(new BenchEvent.Stir());
        for (var i = 0; i < 100; i++)
        {
            trial.Now += TimeSpan.FromSeconds(1);
            trial.Do(new BenchEvent.Ticked());
            Assert.Equal(i + 1 >= 60 ? 1 : 0, trial.Effects.Count(e => e is BenchEffect.Ring));
        }

        Assert.Equal("stirred 0 s · standing 01:40 · read now", trial.State.Clock.Words(trial.Now));
    }

    [Fact]
    public void An_answer_to_an_earlier_question_is_passed_over()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Advise();
        var old = trial.State.Asked;
        trial.Do(new BenchEvent.Typed("4400", "200", ""));
        trial.Do(new BenchEvent.Advised(old, new(null, "out of date", null)));
        Assert.True(trial.State.IsWorking);
        Assert.Null(trial.State.Advice!.Refused);
    }

    [Fact]
    public void A_void_keeps_the_row_and_the_right_one_stands_behind_it()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.Moved(-1));
        var place = trial.State.ChosenPlace;
        trial.Do(new BenchEvent.Voided(place, "a digit too many", "4570.5"));
        var rows = trial.State.Run.File.Contents().Select(r => r.Content).ToList();
        Assert.Equal("a digit too many", rows[place].Void);
        Assert.True(rows[place + 1].Replaces);
        Assert.Equal(4570.5, ((Core.Measuring.InstrumentValue.Direct)rows[place + 1].Reading!.Value!).Viscosity.MilliPascalSeconds);
        trial.Do(new BenchEvent.Voided(place, " ", ""));
        Assert.Equal("say why the entry is void; it stays in sight", trial.State.Error);
    }

    [Fact]
    public void What_was_read_beside_goes_with_the_next_reading_alone()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Do(new BenchEvent.ReadBeside(new(22.5, 8.8, 14, "lumps")));
        trial.Do(new BenchEvent.Typed("4400", "200", "stirred by hand"));
        Assert.Equal((22.5, 8.8, 14.0, "lumps; stirred by hand"), (trial.Last.Reading!.Temperature!.Value.Celsius, trial.Last.Reading.Acidity!.Value.Ph, trial.Last.Reading.StringLength!.Value.Millimeters, trial.Last.Note));
        trial.Do(new BenchEvent.Typed("4410", "260", ""));
        Assert.Null(trial.Last.Reading!.Temperature);
    }

    [Fact]
    public void Another_target_is_stated_and_asks_anew()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        var asked = trial.State.Asked;
        trial.Do(new BenchEvent.Aimed(new Target.Value(Viscosity.FromMilliPascalSeconds(7000), null), Percentage.FromPercent(1)));
        Assert.Equal((7000.0, 1.0, asked + 1), (trial.State.Run.File.Run.Target!.Band.Aim.MilliPascalSeconds, trial.State.Risk.Percent, trial.State.Asked));
        Assert.Equal(6, trial.State.Run.Rows.Length);
    }

    [Theory]
    [InlineData(0, "0.9", "", "")]
    [InlineData(1, "", "", "")]
    [InlineData(1, "1", "2", "")]
    [InlineData(2, "", "x", "")]
    public void The_form_of_what_went_in_takes_one_amount(int outcome, params string[] texts)
    {
        var answer = BenchForms.Change().Read(texts);
        Assert.Equal(outcome == 0, answer.Value is BenchEvent.LetDown);
        Assert.Equal(outcome, answer.Error is null ? 0 : answer.Error == "one of the three" ? 1 : 2);
    }

    [Fact]
    public void The_first_dose_comes_with_its_cautions()
    {
        var trial = new BenchTrial(RunFiles.FileText.Read("# base: GB-40\n# base_g: 120\n# thickener: TA; chemistry=alkali-swellable; range_pct=1-5\n# target_mpas: 9000\nadded_g,wait_s,viscosity_mpas\n,60,850\n"));
        trial.Advise();
        Assert.Contains("goggles and gloves", BenchForms.Dose(trial.State).About, StringComparison.Ordinal);
    }

    [Fact]
    public void The_dose_form_offers_what_is_advised()
    {
        var trial = BenchTrial.OfSample("lantern-gel-07");
        trial.Advise();
        var form = BenchForms.Dose(trial.State);
        Assert.Equal("", form.About);
        var add = (BenchAction.Add)trial.State.Advice!.Advice!.Action;
        Assert.Equal(["SW-1", Viscolog.RunFiles.FileNumbers.Show(add.Poured.Grams)], form.Fields.Select(f => f.Text), StringComparer.Ordinal);
        Assert.Equal(new BenchEvent.Poured("SW-1", Mass.FromGrams(0.7)), form.Read(["SW-1", "0,7"]).Value);
        Assert.Equal((0, "the run has SW-1"), (form.Read(["TU", "1"]).Field, form.Read(["TU", "1"]).Error));
    }
}
