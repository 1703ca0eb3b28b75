using Viscolog.Core.Advising;
using Viscolog.Core.Practice;
using Viscolog.Feeds;
using Viscolog.RunFiles;
using Viscolog.Tests.Support;
using Viscolog.Tui.Bench;
using Viscolog.Tui.Pattern;

namespace Viscolog.Tests.Tui;

/// <summary>Instruments at the bench: what they fill in, what waits for Enter, what the balance says of the pour.</summary>
public sealed class BenchFeedsTests
{
    [Fact]
    public void A_reading_fills_the_field_and_waits_for_Enter_with_the_temperature_of_another_instrument()
    {
        var trial = Trial();
        var before = trial.State.Run.Rows.Length;
        Hear(trial, "temp_c=1", "22.4");
        Hear(trial, "viscosity_mpas=1/2; temp_c=3", "4.52 Pa.s 23.1");
        Assert.Equal("4520", trial.State.Feeds.Text);
        Assert.Equal(before, trial.State.Run.Rows.Length);
        trial.Do(new BenchEvent.Typed(trial.State.Feeds.Text, "", ""));
        var reading = trial.State.Run.File.Contents().Last().Reading!;
        Assert.Equal((4520, 23.1), (reading.Value!.Shown, reading.Temperature!.Value.Celsius));
    }

    /// <summary>A thermometer alone must not make Enter on an empty field a reading.</summary>
    [Fact]
    public void What_stands_beside_is_no_reading_alone()
    {
        var trial = Trial();
        Hear(trial, "temp_c=1", "22.4");
        trial.Do(new BenchEvent.Typed("", "", ""));
        Assert.StartsWith("type a reading", trial.State.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_balance_shows_the_pour_rings_and_what_was_logged_is_spent()
    {
        var trial = Trial();
        var advised = ((Core.Advising.BenchAction.Add)trial.State.Advice!.Advice!.Action).Poured.Grams;
        var bells = 0;
        foreach (var part in (double[])[0.2, 0.5, 0.89, 0.91, 0.95, 1.0, 1.02, 1.06, 1.1])
        {
            var step = Step(trial, "added_g=1/2", FormattableString.Invariant($"{part * advised:0.0000} g"));
            bells += step.Effects.OfType<Ring<BenchEvent>>().Count();
            trial.Take(step);
        }

        Assert.Equal(3, bells);
        Assert.Contains("110 %, too much", BenchFeeds.Words(trial.State, isAscii: true), StringComparison.Ordinal);
        var weighed = trial.State.Feeds.Weight!.Value;
        trial.Do(new BenchEvent.Poured(trial.State.Run.File.Run.Thickeners[0].Name, Core.Quantities.Mass.FromGrams(weighed)));
        Hear(trial, "added_g=1/2", FormattableString.Invariant($"{weighed:0.00} g"));
        Assert.Null(trial.State.Feeds.Weight);
        Hear(trial, "added_g=1/2", "0.00 g");
        Hear(trial, "added_g=1/2", "0.31 g");
        Assert.Equal(0.31, trial.State.Feeds.Weight);
    }

    [Fact]
    public void What_is_stable_is_logged_by_itself_where_that_is_asked_for_and_absurd_readings_are_asked_about()
    {
        var trial = Trial(takesReadings: true);
        var before = trial.State.Run.Rows.Length;
        const string pattern = "viscosity_mpas=1; stable=2:S";
        Hear(trial, pattern, "4510 M");
        Assert.Equal(before, trial.State.Run.Rows.Length);
        Hear(trial, pattern, "4520 S");
        Assert.Equal(before + 1, trial.State.Run.Rows.Length);
        Hear(trial, pattern, "4520 S");
        Assert.Equal(before + 1, trial.State.Run.Rows.Length);
        Hear(trial, pattern, "4520 M");
        trial.Advise();
        trial.Now += TimeSpan.FromSeconds(60);
        Hear(trial, pattern, "900000000 S");
        Assert.Equal(before + 1, trial.State.Run.Rows.Length);
        Assert.NotNull(trial.State.Doubted);
    }

    /// <summary>Balance and viscometer are simulated over what the practice pots hide; Enter is the only key.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(7)]
    [InlineData(11)]
    public void A_pot_is_dosed_to_its_band_and_no_number_is_typed(int seed)
    {
        var session = PracticeSession.Of(PracticeGame.Of(PracticeDifficulty.All[0], seed));
        var trial = new BenchTrial(RunFile.FromRun(session.Run));
        const string pattern = "viscosity_mpas=1/2; temp_c=3";
        var viscometer = LinePattern.Read(pattern, out _)!;
        for (var i = 0; i < 30; i++)
        {
            trial.Advise();
            switch (trial.State.Advice!.Advice!.Action)
            {
                case BenchAction.Add add:
                    for (var part = 1; part <= 10; part++)
                    {
                        Hear(trial, "added_g=1/2", FormattableString.Invariant($"{add.Poured.Grams * part / 10:0.000} g"));
                    }

                    var form = BenchForms.Dose(trial.State);
                    trial.Do(form.Read([.. form.Fields.Select(f => f.Text)]).Value!);
                    Hear(trial, "added_g=1/2", "0.00 g");
                    session = Played(session, new PracticeMove.Dose(add.Poured), new PracticeMove.Stir(TimeSpan.FromSeconds(10)));
                    trial.Do(new BenchEvent.Stir());
                    trial.Now += TimeSpan.FromSeconds(10);
                    trial.Do(new BenchEvent.Stir());
                    break;
                case BenchAction.Stop:
                    var path = PracticePath.Of(PracticePlayer.Person, Played(session, new PracticeMove.End()));
                    Assert.Equal(PracticeVerdict.InBand, path.Score.Verdict);
                    return;
            }

            if (session.Standing is not null)
            {
                session = Played(session, new PracticeMove.Wait(TimeSpan.FromSeconds(90)));
                trial.Now += TimeSpan.FromSeconds(90);
            }

            Hear(
                trial,
                pattern,
                viscometer.Write(c => c.Name == "temp_c" ? 23 : Math.Round(session.Showing!.Value.MilliPascalSeconds, 1), true)!);
            trial.Do(new BenchEvent.Typed(trial.State.Feeds.Text, "", ""));
            Assert.Null(trial.State.Error);
        }

        Assert.Fail("no end after 30 steps");
    }

    /// <summary>What is not logged is drawn all the same: the eye sees when it stands still.</summary>
    [Fact]
    public void A_series_is_drawn_as_it_builds_and_begins_anew_with_the_next_stirring()
    {
        var trial = Trial();
        Stirred(trial);
        var (due, rows) = (TimeSpan.FromMinutes(2), trial.State.Run.Rows.Length);
        for (var second = 1; second <= due.TotalSeconds; second++)
        {
            trial.Now += TimeSpan.FromSeconds(1);
            Hear(trial, "viscosity_mpas=1", FormattableString.Invariant($"{5000 * (1 - Math.Exp(-second / 20.0)):0}"));
        }

        var strip = Strip(due);
        Assert.Equal(string.Concat(strip.OrderBy(Rank)), strip);
        Assert.Equal('#', strip[^1]);
        Assert.InRange(strip.Distinct().Count(), 3, 8);
        Assert.InRange(trial.State.Feeds.Trace.Points.Length, 10, 60);
        Assert.Equal(rows, trial.State.Run.Rows.Length);

        // Half of the time still to come stays open, and what jitters by half a per cent is drawn level.
        Stirred(trial);
        for (var second = 1; second <= due.TotalSeconds / 2; second++)
        {
            trial.Now += TimeSpan.FromSeconds(1);
            Hear(trial, "viscosity_mpas=1", FormattableString.Invariant($"{5000 + (25 * (second % 2)):0}"));
        }

        Assert.Equal(new string('_', 8) + new string(' ', 8), Strip(due / 2));

        string Strip(TimeSpan stood) => BuildUpStrip.Of(trial.State.Feeds.Trace, null, due, stood, 16, isAscii: true);

        static int Rank(char mark) => "_.-~=+*#".IndexOf(mark, StringComparison.Ordinal);
    }

    /// <summary>An hour of a viscometer that sends ten readings a second, each taken in; the pot creeps up as a real one does.</summary>
    [Fact]
    public void An_hour_of_a_stream_is_thinned_and_keeps_the_memory_flat()
    {
        var trial = Trial(takesReadings: true);
        Stirred(trial);
        var before = trial.State.Run.Rows.Length;
        var pattern = LinePattern.Read("viscosity_mpas=1", out _)!;
        long? early = null;
        for (var i = 0; i < 36_000; i++)
        {
            trial.Now += TimeSpan.FromMilliseconds(100);
            var line = FormattableString.Invariant($"{4560 * (1 + (0.02 * (1 - Math.Exp(-i / 6000.0)))):0.0}");
            trial.Do(new BenchEvent.Heard(new FeedEvent.Understood("it", (LineOutcome.Understood)pattern.Read(line), trial.Now)));
            early ??= i == 6000 ? GC.GetTotalMemory(forceFullCollection: true) : null;
        }

        // The step's last reading stood 180 s: what stands less is no later reading of it.
        Assert.InRange(trial.State.Run.Rows.Length - before, 20, 40);
        Assert.InRange(GC.GetTotalMemory(forceFullCollection: true) - early!.Value, long.MinValue, 8_000_000);
        Assert.Equal(3600, trial.State.Run.File.Contents().Last().Reading!.Wait!.Value.TotalSeconds, 400.0);
    }

    [Fact]
    public void A_plug_that_was_pulled_and_lines_that_say_nothing_are_shown_and_a_foreign_unit_fills_nothing()
    {
        var trial = Trial();
        trial.Do(new BenchEvent.Heard(new FeedEvent.Told("scale", FeedState.Lost, "gone")));
        trial.Do(new BenchEvent.Heard(new FeedEvent.Misread("visc", "x", "expected a number", 3)));
        Assert.Equal(
            "scale: unplugged or closed; it is tried again · visc: 3 not understood", BenchFeeds.Words(trial.State, isAscii: true));
        trial.Do(new BenchEvent.Heard(new FeedEvent.Told("scale", FeedState.Back, "")));
        Hear(trial, "ku=1", "92");
        Assert.Equal("", trial.State.Feeds.Text);
        Assert.Contains("shows KU", BenchFeeds.Words(trial.State, isAscii: true), StringComparison.Ordinal);
    }

    [Fact]
    public void A_desk_keeps_the_latest_of_a_flood_and_calls_once_until_it_is_taken()
    {
        var calls = 0;
        using var desk = new FeedDesk([], TimeProvider.System);
        desk.Call(() => calls++);
        var pattern = LinePattern.Read("viscosity_mpas=1", out _)!;
        for (var i = 1; i <= 10_000; i++)
        {
            desk.Tell(new FeedEvent.Understood("v", (LineOutcome.Understood)pattern.Read(FormattableString.Invariant($"{i}")), default));
        }

        Assert.Equal(1, calls);
        Assert.Equal(10_000, ((FeedEvent.Understood)Assert.Single(desk.Take())).Line.Values[0].Value);
        desk.Tell(new FeedEvent.Told("v", FeedState.Lost, ""));
        Assert.Equal(2, calls);
    }

    private static PracticeSession Played(PracticeSession session, params PracticeMove[] moves)
    {
        var turn = session.Take(moves);
        Assert.Null(turn.Refusal);
        return turn.Session;
    }

    private static BenchTrial Trial(bool takesReadings = false)
    {
        var trial = new BenchTrial(
            Viscolog.Tests.RunFiles.FileText.Read(File.ReadAllText(Checkout.Sample("lantern-gel-07.csv"))), takesReadings);
        trial.Advise();
        return trial;
    }

    private static void Stirred(BenchTrial trial)
    {
        trial.Do(new BenchEvent.Stir());
        trial.Now += TimeSpan.FromSeconds(10);
        trial.Do(new BenchEvent.Stir());
    }

    private static void Hear(BenchTrial trial, string pattern, string line) => trial.Do(Heard(trial, pattern, line));

    private static Step<BenchState, BenchEvent> Step(BenchTrial trial, string pattern, string line)
        => BenchSteps.Next(trial.State, Heard(trial, pattern, line), trial.Now);

    private static BenchEvent.Heard Heard(BenchTrial trial, string pattern, string line)
        => new(new FeedEvent.Understood(
            "it",
            Assert.IsType<LineOutcome.Understood>(LinePattern.Read(pattern, out _)!.Read(line)),
            trial.Now));
}
