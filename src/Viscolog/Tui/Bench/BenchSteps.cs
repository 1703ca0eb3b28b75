using System.Collections.Immutable;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Store;
using Viscolog.Store.Copy;
using Viscolog.Tables;
using Viscolog.Tui.Batches;
using Viscolog.Tui.Charts;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;
using Viscolog.Wording;
using BenchStep = Viscolog.Tui.Pattern.Step<Viscolog.Tui.Bench.BenchState, Viscolog.Tui.Bench.BenchEvent>;

namespace Viscolog.Tui.Bench;

/// <summary>
/// The bench screen as a machine: a state and an event make a state and what the world is asked to do. Rules of the trade are Core's.
/// </summary>
internal static class BenchSteps
{
    /// <summary>Standing before a reading where no advice says how long (common practice, no source).</summary>
    private static readonly TimeSpan UsualStanding = TimeSpan.FromSeconds(60);

    /// <summary>The state of a run that is opened, its advice asked for.</summary>
    public static BenchStep Open(LoggedRun run, ImmutableArray<Run> earlier, bool takesReadings = false)
    {
        var entries = Count.Of(run.Rows.Length, Say("entry"), Say("entries"));
        return Advise(new(run)
        {
            Earlier = earlier,
            Feeds = new() { TakesReadings = takesReadings },
            Clock = BenchClock.Of(run.Clock),
            History = new(BenchChange.Known(run), []),
            Said = Say($"run {run.Number} opened, {entries}"),
        });
    }

    /// <summary>What an event makes of a state.</summary>
    public static BenchStep Next(BenchState state, BenchEvent @event, DateTimeOffset now) => @event switch
    {
        BenchEvent.Typed typed => Enter(state, typed, now),
        BenchEvent.Heard heard => BenchFeeds.Hear(state, heard.Event, now),
        BenchEvent.Pasted pasted => Paste(state, pasted.Lines, now),
        BenchEvent.Corrected => Saying(
            state with { Doubted = null, Pasted = [] },
            state.Doubted is not null ? Say("not saved; type the reading as it was")
                : state.Pasted.IsEmpty ? ""
                : Say("nothing that was pasted is saved")),
        BenchEvent.TookAdvised => TakeAdvised(state, now),
        BenchEvent.Poured poured => Pour(state, poured.Thickener, poured.Grams, now),
        BenchEvent.LetDown down => LetDown(state, down.Grams, now),
        BenchEvent.Watered water => Change(
            state,
            new() { Water = water.Grams, Time = now },
            Say($"{Shown.Grams(water.Grams)} of water added")),
        BenchEvent.TakenOut taken => Add(state, new() { Taken = taken.Grams, Time = now }, Say($"{Shown.Grams(taken.Grams)} taken out")),
        BenchEvent.Stir => SetClock(
            state, state.Clock.IsStirring ? Say("stirring ended, standing begins") : Say("stirring"), state.Clock.Toggled(now)),
        BenchEvent.StoodFor stood => SetClock(state, Say("the clock is set"), state.Clock.TimesFor(stood.Time, now)),
        BenchEvent.ClockJumped jumped => state.Clock.StirBegan is null ? state : AskClock(state, jumped.By, now),
        BenchEvent.TakenBack => Log(state, state.History.Said, ChangeWay.Back, Say("nothing is left to undo")),
        BenchEvent.SaidAgain => Log(state, state.History.TakenBack, ChangeWay.Again, Say("nothing was undone that could be redone")),
        BenchEvent.Explained => Explain(state),
        BenchEvent.Leaving => Saying(state, Say("stirring continues in the log; the same key again leaves")),
        BenchEvent.ReadBeside { Readings: var read } => Saying(
            state with { Beside = read },
            read.IsEmpty ? Say("nothing with the next reading") : Say($"with the next reading: {read.Words}")),
        BenchEvent.Voided voided => Void(state, voided, now),
        BenchEvent.Aimed aimed => Aim(state, aimed),
        BenchEvent.Correcting => new BenchStep(state, new BenchEffect.AskAbout(state.Run)),
        BenchEvent.RunCorrected corrected => Log(
            state, new BenchChange.Header(Say("what the run says of itself"), state.Run.File.WithoutRows(), corrected.Header)),
        BenchEvent.PaperCalled => new BenchStep(state, new BenchEffect.WritePaper(state.Run, state.Earlier)),
        BenchEvent.Told told => Saying(state, told.What),
        BenchEvent.Copied => CopyOut(state),
        BenchEvent.Moved moved => Move(state, moved.Rows),
        BenchEvent.Logged logged => Logged(state, logged),
        BenchEvent.NotLogged not => state with { Error = not.Reason, Said = "" },
        BenchEvent.Advised advised => Answer(state, advised.Advice),
        BenchEvent.Called called => called.Form(state) is { } form ? new BenchStep(state, new Ask<BenchEvent>(form)) : state,
        BenchEvent.Charted => Chart(state),
        BenchEvent.Checked => new BenchStep(state, new Show<BenchEvent>(context => CheckScreen.On(context, state.Run))),
        BenchEvent.Ticked => Tick(state, now),
        _ => throw new ArgumentOutOfRangeException(nameof(@event), @event, "not a case of the closed set"),
    };

    private static BenchState Saying(BenchState state, string said) => state with { Error = null, Said = said };

    private static BenchStep Advise(BenchState state)
        => new BenchStep(state with { IsWorking = true }, new BenchEffect.Advise(state.Run.File.Run, state.Risk, state.Earlier));

    /// <summary>Enters what stands in the fields.</summary>
    internal static BenchStep Enter(BenchState state, BenchEvent.Typed typed, DateTimeOffset now)
    {
        if (!state.Pasted.IsEmpty)
        {
            return EnterPasted(state);
        }

        var note = typed.Note.Trim();
        if (typed.Reading.Trim().Length == 0 && state.Beside.IsEmpty)
        {
            return note.Length == 0
                ? state with { Error = Say($"type a reading in {BenchValue.Unit(state.Run.File.Run)}, then Enter") }
                : Add(state, new() { Note = note, Time = now }, Say("a note"));
        }

        if (Reading(state, typed, now, out var error) is not { } reading)
        {
            return state with { Error = error };
        }

        if (typed != state.Doubted && state is { IsWorking: false, Advice.Study: { } study } && Surprise.Of(study, reading) is { } surprise)
        {
            return state with { Doubted = typed, Error = Say($"{ReasonWords.Of(surprise)}: Enter keeps it, Esc corrects") };
        }

        return Add(
            state,
            new() { Reading = reading, Note = note.Length == 0 ? null : note, Time = now },
            typed.Reading.Trim().Length == 0 ? state.Beside.Words : BenchValue.Words(reading.Value!));
    }

    /// <summary>Reads pasted lines, all of them or none; they are entered when that is said.</summary>
    private static BenchStep Paste(BenchState state, ImmutableArray<string> lines, DateTimeOffset now)
    {
        var rows = new List<FileRow>();
        var alone = state with { Beside = BenchReadings.None };
        foreach (var (line, place) in lines.Select((l, i) => (l, i + 1)))
        {
            string[] cells = [.. line.Split(['\t', ';'], 3), "", ""];
            var typed = new BenchEvent.Typed(cells[0], cells[1], cells[2]);
            if (Reading(alone, typed, now, out var error) is not { Value: not null } reading)
            {
                var why = error ?? Say("a reading is missing");
                return state with
                {
                    Pasted = [],
                    Error = Say($"line {place} of {lines.Length}: {why}; nothing is saved"),
                };
            }

            rows.Add(new() { Reading = reading, Time = now, Note = typed.Note.Trim() is { Length: > 0 } note ? note : null });
        }

        var all = Count.Of(rows.Count, Say("reading"), Say("readings"));
        return state with { Pasted = [.. rows], Error = Say($"{all}: Enter saves all, Esc drops them") };
    }

    private static BenchStep EnterPasted(BenchState state)
    {
        var first = state.Run.Rows.Length + 1;
        ImmutableArray<int> numbers = [.. Enumerable.Range(first, state.Pasted.Length)];
        return Log(state with { Pasted = [] }, new BenchChange.Rows(
            Count.Of(numbers.Length, Say("reading"), Say("readings")),
            [.. state.Pasted.Select(r => new RunEdit.Add(r))],
            [.. numbers.Select(n => new RunEdit.Void(n, BenchChange.TakenBack))],
            [.. numbers.Select(n => new RunEdit.Lift(n))]));
    }

    private static Reading? Reading(BenchState state, BenchEvent.Typed typed, DateTimeOffset now, out string? error)
    {
        error = null;
        var value = typed.Reading.Trim().Length == 0 ? null : BenchValue.Read(typed.Reading, state.Run.File.Run, out error);
        var wait = state.Clock.Standing(now);
        if (error is null && typed.Wait.Trim().Length > 0)
        {
            wait = TypedNumber.Read(typed.Wait, NumberRange.Seconds, out error) is { } seconds ? FileNumbers.Span(seconds) : null;
        }

        if (error is not null)
        {
            return null;
        }

        // What instruments show beside goes with a reading; alone it is none.
        var beside = value is null ? state.Beside : state.Beside.Or(state.Feeds.Beside);
        var reading = new Reading
        {
            Value = value,
            Stir = state.Clock.Stirred is { } stirred ? TimeSpan.FromSeconds(Math.Round(stirred.TotalSeconds)) : null,
            Wait = wait is { } w ? TimeSpan.FromSeconds(Math.Round(w.TotalSeconds)) : null,
            Temperature = beside.TempC is { } t ? Temperature.FromCelsius(t) : null,
            Acidity = beside.Ph is { } ph ? Acidity.FromPh(ph) : null,
            StringLength = beside.StringMm is { } mm ? Length.FromMillimeters(mm) : null,
            Fault = beside.Fault,
        };
        if (state.Run.File.Run.Append(new Entry.Measured(reading)) is Appended.Refused { Fault: EntryFault.StandsBackwards(var before) })
        {
            error = Say($"at the last reading the pot had stood {before.TotalSeconds:0} s since the last addition; "
                + $"enter the total standing time");
        }

        return error is null ? reading : null;
    }

    private static BenchStep TakeAdvised(BenchState state, DateTimeOffset now) => (state.IsWorking, state.Advice?.Advice) switch
    {
        (true, _) => state with { Error = Say("the advice is being worked out; one moment") },
        // The form shows the cautions, which must be seen before the first addition of a run.
        (_, { Action: BenchAction.Add }) when BenchForms.Cautions(state).Length > 0
            => new BenchStep(state, new Ask<BenchEvent>(BenchForms.Dose(state))),
        (_, { Action: BenchAction.Add add } advice) => Pour(state, advice.Thickener.Name, add.Poured, now),
        (_, { Action: BenchAction.LetDown down }) => LetDown(state, down.Base, now),
        _ => state with { Error = Say("no addition is advised now; F2 takes your own grams") },
    };

    private static BenchStep LetDown(BenchState state, Mass grams, DateTimeOffset now)
        => Change(state, new() { LetDown = grams, Time = now }, Say($"{Shown.Grams(grams)} of base added"));

    private static BenchStep Pour(BenchState state, string thickener, Mass grams, DateTimeOffset now)
        => Change(
            state,
            new() { Dosed = new(thickener, grams), Time = now },
            Say($"{Shown.Grams(grams)} {thickener} added; F3 starts stirring"));

    /// <summary>Something went into the pot: the step is a new one, and so is its clock.</summary>
    private static BenchStep Change(BenchState state, FileRow row, string said)
    {
        var due = state.Advice?.Advice?.Action is BenchAction.Add add ? add.Standing : UsualStanding;
        return Log(state, Added(state, row, said) with { Step = new(state.Clock.Times, due) });
    }

    private static BenchStep Add(BenchState state, FileRow row, string said) => Log(state, Added(state, row, said));

    private static BenchChange.Rows Added(BenchState state, FileRow row, string said)
        => BenchChange.Rows.Added(said, row, state.Run.Rows.Length + 1);

    private static BenchStep Log(BenchState state, BenchChange change, ChangeWay way = ChangeWay.First)
        => new BenchStep(state with { Error = null, Doubted = null }, [new BenchEffect.Log(state.Run.Number, change, way)]);

    private static BenchStep Log(BenchState state, ImmutableStack<BenchChange> from, ChangeWay way, string nothing)
        => from.IsEmpty ? Saying(state, nothing) : Log(state, from.Peek(), way);

    private static BenchStep Logged(BenchState state, BenchEvent.Logged logged)
    {
        var (change, way) = (logged.Change, logged.Way);
        var said = way switch
        {
            ChangeWay.First => Say($"saved: {change.What}"),
            ChangeWay.Back => Say($"undone: {change.What} (Ctrl+Y redoes it)"),
            _ => Say($"redone: {change.What}"),
        };
        var after = Saying(state, said) with { Run = logged.Run, History = state.History.After(change, way) };
        if (change is BenchChange.Clock clock)
        {
            var due = state.Clock.Due;
            return after with
            {
                Clock = BenchClock.Of(clock.TimesOf(way)) with { Due = due },
                Said = way == ChangeWay.First ? change.What : said,
            };
        }

        var isReading = change is BenchChange.Rows { First: [RunEdit.Add { Row.Reading: not null }] } && way == ChangeWay.First;
        return Advise(after with
        {
            Chosen = null,
            Entered = state.Entered + 1,
            Beside = isReading ? BenchReadings.None : state.Beside,
            Feeds = change is BenchChange.Rows { Step: not null } && way != ChangeWay.Back ? state.Feeds.Poured() : state.Feeds,
            Clock = change is not BenchChange.Rows { Step: { } step } ? state.Clock
                : way == ChangeWay.Back ? BenchClock.Of(step.Before)
                : new() { Due = step.Due },
        });
    }

    private static BenchStep SetClock(BenchState state, string what, StirTimes times)
        => Log(state, new BenchChange.Clock(what, state.Clock.Times, times));

    private static BenchStep AskClock(BenchState state, TimeSpan by, DateTimeOffset now)
        => new BenchStep(state with { IsClockAsked = true }, new Ask<BenchEvent>(BenchForms.Clock(state.Clock, by, now)));

    private static BenchStep CopyOut(BenchState state)
    {
        var (said, text) = state.Chosen is { } place
            ? (Say("copied: the entry"), BenchTable.Words(state.Run.File.Contents().ElementAt(place)))
            : state.Advice is { } advice ? (Say("copied: the advice"), string.Join('\n', AdvicePage.Lines(advice, 100)))
            : ("", "");
        return text.Length == 0
            ? Saying(state, Say("nothing to copy yet"))
            : new BenchStep(Saying(state, said), new Copy<BenchEvent>(text));
    }

    private static BenchStep Explain(BenchState state)
        => state.Advice is { } advice
            ? new BenchStep(
                state, new Show<BenchEvent>(context => HelpScreen.On(context, Say("The advice"), w => AdvicePage.Lines(advice, w))))
            : state;

    private static BenchStep Void(BenchState state, BenchEvent.Voided voided, DateTimeOffset now)
    {
        var (row, number) = (state.Run.File.Contents().ElementAt(voided.Place), state.Run.Rows[voided.Place]);
        if (row.Void is not null)
        {
            return Lift(state, voided.Place, row.Void);
        }

        var reason = voided.Reason.Trim();
        if (reason.Length == 0)
        {
            return state with { Error = Say("say why the entry is void; it stays in sight") };
        }

        if (voided.Right.Trim().Length == 0)
        {
            return Log(state, new BenchChange.Rows(
                Say("the entry is void"),
                [new RunEdit.Void(number, reason)],
                [new RunEdit.Lift(number)],
                [new RunEdit.Void(number, reason)]));
        }

        if (Right(state, row, voided.Right, now, out var error) is not { } by)
        {
            return state with { Error = error };
        }

        var added = state.Run.Rows.Length + 1;
        return Log(state, new BenchChange.Rows(
            Say("the entry is void, the right one replaces it"),
            [new RunEdit.Void(number, reason), new RunEdit.Add(by, number)],
            [new RunEdit.Void(added, BenchChange.TakenBack), new RunEdit.Lift(number)],
            [new RunEdit.Void(number, reason), new RunEdit.Lift(added)]));
    }

    /// <summary>A void entry counts again; what stood in its place does not.</summary>
    private static BenchStep Lift(BenchState state, int place, string reason)
    {
        var number = state.Run.Rows[place];
        var next = state.Run.File.Contents().ElementAtOrDefault(place + 1);
        return next is { Replaces: true, Void: null } && state.Run.Rows[place + 1] is var other
            ? Log(state, new BenchChange.Rows(
                Say("the entry counts again, its replacement is void"),
                [new RunEdit.Void(other, BenchChange.TakenBack), new RunEdit.Lift(number)],
                [new RunEdit.Void(number, reason), new RunEdit.Lift(other)],
                [new RunEdit.Void(other, BenchChange.TakenBack), new RunEdit.Lift(number)]))
            : Log(state, new BenchChange.Rows(
                Say("the entry counts again"),
                [new RunEdit.Lift(number)],
                [new RunEdit.Void(number, reason)],
                [new RunEdit.Lift(number)]));
    }

    /// <summary>The row with the right number: of its reading, or else of what went in or out.</summary>
    private static FileRow? Right(BenchState state, FileRow row, string text, DateTimeOffset now, out string? error)
    {
        var content = row with { Time = row.Time is null ? null : now, Replaces = true };
        if (content.Reading is { Value: not null } reading)
        {
            return BenchValue.Read(text, state.Run.File.Run, out error) is { } value
                ? content with { Reading = reading with { Value = value } }
                : null;
        }

        if (TypedNumber.Read(text, NumberRange.GramsPresent, out error) is not { } number)
        {
            return null;
        }

        var grams = Mass.FromGrams(number);
        FileRow? changed = content switch
        {
            { Dosed: { } dosed } => content with { Dosed = dosed with { Poured = grams } },
            { LetDown: not null } => content with { LetDown = grams },
            { Water: not null } => content with { Water = grams },
            { Taken: not null } => content with { Taken = grams },
            _ => null,
        };
        error = changed is null ? Say("that entry has no number to correct") : null;
        return changed;
    }

    private static BenchStep Aim(BenchState state, BenchEvent.Aimed aimed)
    {
        var run = state.Run.File.Run;
        var risked = state with { Risk = aimed.Risk, Error = null };
        if (aimed.Target == run.Target)
        {
            return Advise(risked with { Said = Say($"risk of going over: {Shown.Chance(aimed.Risk)}") });
        }

        var header = state.Run.File.WithoutRows() with { Run = run with { Target = aimed.Target, Entries = [] }, UnusedTolerance = null };
        return Log(risked, new BenchChange.Header(Say("the target"), state.Run.File.WithoutRows(), header));
    }

    private static BenchState Move(BenchState state, int rows)
    {
        var last = state.Run.Rows.Length - 1;
        var place = Math.Clamp(state.ChosenPlace + rows, 0, Math.Max(0, last));
        return state with { Chosen = place == last ? null : place, Error = null };
    }

    private static BenchState Answer(BenchState state, BenchAdvice advice)
    {
        var due = advice.Advice?.Action switch
        {
            BenchAction.Wait wait => LastWait(state) + wait.More,
            BenchAction.Measure { Standing: { } standing } => standing,
            BenchAction.Measure or null => state.Clock.Due,
            // Whatever else is advised, there is nothing to wait for.
            _ => (TimeSpan?)null,
        };
        var clock = due == state.Clock.Due ? state.Clock : state.Clock with { Due = due, HasRung = false };
        return state with { Advice = advice, IsWorking = false, Clock = clock };
    }

    private static TimeSpan LastWait(BenchState state)
        => state.Run.File.Run.Entries.OfType<Entry.Measured>().LastOrDefault(m => m.Counts)?.Reading.Wait ?? TimeSpan.Zero;

    private static BenchStep Chart(BenchState state)
        => state.Advice?.Picture is { } picture
            ? new BenchStep(state, new Show<BenchEvent>(context => ChartScreen.On(context, [picture])))
            : state;

    private static BenchStep Tick(BenchState state, DateTimeOffset now)
    {
        if (!state.IsClockAsked && state.Clock.IsAhead(now))
        {
            return AskClock(state, now - (state.Clock.StirEnded ?? state.Clock.StirBegan)!.Value, now);
        }

        var isDue = !state.Clock.HasRung && state.Clock.Due is { } due && state.Clock.Standing(now) >= due;
        return isDue
            ? new BenchStep(
                state with { Clock = state.Clock with { HasRung = true }, Said = Say("time to read") }, [new Ring<BenchEvent>()])
            : state;
    }
}
