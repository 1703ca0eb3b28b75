using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.RunFiles;
using Viscolog.Tables;
using Viscolog.Tui.Pattern;
using Viscolog.Typing;
using Viscolog.Wording;

namespace Viscolog.Tui.Bench;

/// <summary>The forms of the bench screen.</summary>
internal static class BenchForms
{
    private static readonly NumberRange RiskRange = new("%", 0.01, 50);
    private static readonly NumberRange ToleranceRange = new("%", 0.001, 99);

    public static Form<BenchEvent> Dose(BenchState state)
    {
        var run = state.Run.File.Run;
        var advised = state.Advice?.Advice is { Action: BenchAction.Add add } advice
            ? (Thickener: advice.Thickener.Name, Grams: TypedNumber.Filled(add.Poured.Grams))
            : (Thickener: run.Thickeners.FirstOrDefault()?.Name ?? "", Grams: "");
        var names = string.Join(", ", run.Thickeners.Select(t => t.Name));
        return new(
            Say("Thickener added"),
            Cautions(state),
            [
                new(Say("thickener"), advised.Thickener, names) { Choices = [.. run.Thickeners.Select(t => t.Name)] },
                new(
                    Say("poured"),
                    state.Feeds.Weight is { } weighed and > 0 ? TypedNumber.Filled(weighed) : advised.Grams,
                    Say("g, as weighed, or mL")) { IsFirst = true },
            ],
            texts =>
            {
                if (run.FindThickener(texts[0].Trim()) is not { } thickener)
                {
                    return FormAnswer<BenchEvent>.Wrong(0, Say($"the run has {names}"));
                }

                var density = thickener.Dilution == PreDilution.None ? thickener.Density : null;
                return TypedNumber.Read(texts[1], NumberRange.GramsPresent, out var error, density) is { } grams
                    ? FormAnswer<BenchEvent>.Of(new BenchEvent.Poured(thickener.Name, Mass.FromGrams(grams)))
                    : FormAnswer<BenchEvent>.Wrong(1, error!);
            });
    }

    /// <summary>The cautions before the first addition of a run; empty at the others.</summary>
    public static string Cautions(BenchState state)
        => !state.Run.File.Run.Entries.Any(e => e is Entry.Dosed { Counts: true })
            && state.Advice?.Advice?.Cautions is { IsDefault: false } cautions
            ? CautionWords.Of(cautions) : "";

    public static Form<BenchEvent> Beside(BenchState state) => new(
        Say("With the next reading"),
        "",
        [
            new(Say("temperature"), Text(state.Beside.TempC), "°C"),
            new("pH", Text(state.Beside.Ph)),
            new(Say("string length"), Text(state.Beside.StringMm), "mm"),
            new(Say("fault seen"), state.Beside.Fault is { } seen ? FaultWords.Of(seen) : "")
            {
                Choices = [.. FaultWords.All],
            },
        ],
        texts =>
        {
            NumberRange[] ranges = [NumberRange.Temperature, Columns.Ph.Range!, Columns.StringLength.Range!];
            var values = new double?[3];
            for (var i = 0; i < 3; i++)
            {
                if (texts[i].Trim().Length > 0)
                {
                    values[i] = TypedNumber.Read(texts[i], ranges[i], out var error);
                    if (error is not null)
                    {
                        return FormAnswer<BenchEvent>.Wrong(i, error);
                    }
                }
            }

            var fault = FaultWords.Find(texts[3]);
            return fault is null && texts[3].Trim().Length > 0
                ? FormAnswer<BenchEvent>.Wrong(3, Say($"one of {string.Join(", ", FaultWords.All)}; anything else goes in the note"))
                : FormAnswer<BenchEvent>.Of(new BenchEvent.ReadBeside(new(values[0], values[1], values[2], fault)));
        });

    public static Form<BenchEvent>? Void(BenchState state)
    {
        if (state.Run.Rows.IsEmpty)
        {
            return null;
        }

        var (place, row) = (state.ChosenPlace, state.Run.File.Contents().ElementAt(state.ChosenPlace));
        var (number, count, words) = (place + 1, state.Run.Rows.Length, BenchTable.Words(row));
        return row.Void is { } reason
            ? new(
                Say("Let the entry count again"),
                Say($"Entry {number} of {count}: {words}. It is void; it will count again, and what replaced it will not."),
                [new(Say("was void because"), BenchChange.Why(reason))],
                _ => FormAnswer<BenchEvent>.Of(new BenchEvent.Voided(place, "", "")))
            : new(
                Say("Void an entry"),
                Say($"Entry {number} of {count}: {words}. It stays in sight and no longer counts. "
                    + $"Enter below what it should have been, or leave that empty."),
                [new(Say("why"), Say("typed wrong")), new(Say("right number"), "", Say("of the reading, or grams"))],
                texts => texts[0].Trim().Length == 0
                    ? FormAnswer<BenchEvent>.Wrong(0, Say("say why"))
                    : FormAnswer<BenchEvent>.Of(new BenchEvent.Voided(place, texts[0], texts[1])));
    }

    /// <summary>Asks how long the pot has stood, or has been stirred, where the computer's clock can't be trusted.</summary>
    public static Form<BenchEvent> Clock(BenchClock clock, TimeSpan by, DateTimeOffset now)
    {
        var shown = clock.IsStirring ? now - clock.StirBegan!.Value : clock.Standing(now) ?? TimeSpan.Zero;
        var usual = shown < TimeSpan.Zero ? TimeSpan.Zero : shown;
        var (jump, time) = (BenchClock.Shown(by.Duration()), BenchClock.Shown(usual));
        var went = by < TimeSpan.Zero ? Say($"It went back by {jump}: it was set, or the computer slept.")
            : Say($"It went forward by {jump}: it was set, or the computer slept.");
        var since = clock.IsStirring ? Say($"By it, the pot has been stirred for {time}. How long is it really?")
            : Say($"By it, the pot has stood for {time}. How long is it really?");
        return new(
            Say("The computer's clock jumped"),
            $"{went} {since}",
            [new(clock.IsStirring ? Say("stirred for") : Say("stood for"), time, Say("as 2:30, or in s"))],
            texts => Span(texts[0]) is { } span
                ? FormAnswer<BenchEvent>.Of(new BenchEvent.StoodFor(span))
                : FormAnswer<BenchEvent>.Wrong(0, Say("a time such as 2:30 or 150")));
    }

    /// <summary>Seconds, minutes and seconds, or hours, minutes and seconds; null where it is none of these.</summary>
    private static TimeSpan? Span(string text)
    {
        var parts = text.Trim().Split(':');
        double seconds = 0;
        foreach (var part in parts)
        {
            if (TypedNumber.Read(part, NumberRange.Seconds, out _) is not { } number)
            {
                return null;
            }

            seconds = (60 * seconds) + number;
        }

        return parts.Length <= 3 ? FileNumbers.Span(seconds) : null;
    }

    public static Form<BenchEvent> Change(BenchState state) => new(
        Say("Something else added or removed"),
        Say("One of the three, in g; mL, US cup and US fl oz also work."),
        [new(Say("base in"), "", "g"), new(Say("water in"), "", "g"), new(Say("sample out"), "", "g")],
        texts =>
        {
            var filled = Enumerable.Range(0, 3).Where(i => texts[i].Trim().Length > 0).ToList();
            if (filled is not [var only])
            {
                return FormAnswer<BenchEvent>.Wrong(filled.Count == 0 ? 0 : filled[1], Say("one of the three"));
            }

            var density = only == 1 ? Density.Water : state.Run.File.Run.Base.Density;
            return TypedNumber.Read(texts[only], NumberRange.GramsPresent, out var error, density) is not { } number
                ? FormAnswer<BenchEvent>.Wrong(only, error!)
                : FormAnswer<BenchEvent>.Of(only switch
                {
                    0 => new BenchEvent.LetDown(Mass.FromGrams(number)),
                    1 => new BenchEvent.Watered(Mass.FromGrams(number)),
                    _ => new BenchEvent.TakenOut(Mass.FromGrams(number)),
                });
        });

    public static Form<BenchEvent> Aim(BenchState state)
    {
        var target = state.Run.File.Run.Target;
        var (wanted, tolerance) = target switch
        {
            Target.Value value => (value.Wanted.MilliPascalSeconds, (value.Tolerance ?? Target.DefaultTolerance).Percent),
            Target.Ends ends => (
                ends.Band.Aim.MilliPascalSeconds,
                100 * ((ends.High.MilliPascalSeconds / ends.Band.Aim.MilliPascalSeconds) - 1)),
            _ => (double.NaN, Target.DefaultTolerance.Percent),
        };
        return new(
            Say("Target and risk"),
            "",
            [
                new(Say("target"), double.IsNaN(wanted) ? "" : TypedNumber.Filled(Math.Round(wanted, 3)), "mPa·s"),
                new(Say("tolerance"), TypedNumber.Filled(Math.Round(tolerance, 3)), Say("% either side")),
                new(Say("risk of going over"), TypedNumber.Filled(state.Risk.Percent), Say("% a dose")),
            ],
            texts =>
            {
                NumberRange[] ranges = [NumberRange.Viscosity, ToleranceRange, RiskRange];
                var values = new double[3];
                for (var i = 0; i < 3; i++)
                {
                    if (TypedNumber.Read(texts[i], ranges[i], out var error) is not { } value)
                    {
                        return FormAnswer<BenchEvent>.Wrong(i, error!);
                    }

                    values[i] = value;
                }

                var same = Math.Abs(values[0] - Math.Round(wanted, 3)) < 1e-9 && Math.Abs(values[1] - Math.Round(tolerance, 3)) < 1e-9;
                return FormAnswer<BenchEvent>.Of(new BenchEvent.Aimed(
                    same ? target : new Target.Value(Viscosity.FromMilliPascalSeconds(values[0]), Percentage.FromPercent(values[1])),
                    Percentage.FromPercent(values[2])));
            });
    }

    private static string Text(double? value) => value is { } v ? TypedNumber.Filled(v) : "";
}
