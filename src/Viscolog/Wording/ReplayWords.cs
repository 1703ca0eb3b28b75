using Viscolog.Core.Measuring;
using Viscolog.Core.Pots;
using Viscolog.Core.Practice;
using Viscolog.Text;

namespace Viscolog.Wording;

/// <summary>A replayed run in words.</summary>
internal static class ReplayWords
{
    private const int NameColumns = 10;

    /// <summary>How many of a run's readings are judged; null where all are.</summary>
    public static string? Sampled(Run run)
    {
        var readings = run.Entries.Count(e => e is Entry.Measured && e.Counts);
        var judged = ReplaySample.Of(run).Count;
        return judged == readings ? null
            : readings > ReplaySample.Furthest
            ? Say($"{judged} of {readings} readings are judged, those before an addition first, of the first {ReplaySample.Furthest}")
            : Say($"{judged} of {readings} readings are judged, those before an addition first, spread over the run");
    }

    /// <summary>The whole of it, in lines of so many columns.</summary>
    public static Func<int, IEnumerable<string>> Lines(Run run, IReadOnlyList<ReplayMoment> moments) => columns =>
    [
        .. Sampled(run) is { } sampled ? Paragraph.Of(sampled, columns) : [],
        .. moments.SelectMany(m => (string[])
        [
            "",
            Say($"Reading {m.Number}"),
            .. Row(Say("known"), Known(m), columns),
            .. m.Outcome is null ? [] : Row(Say("advised"), Advised(m), columns),
            .. Row(Say("done", "row"), $"{Done(m)} {Compared(m)}".TrimEnd(), columns),
        ]),
    ];

    /// <summary>What was known: the last reading, and what the readings so far say of the body.</summary>
    public static string Known(ReplayMoment moment)
    {
        var now = moment.Advice?.Body.Now is { } body
            ? Say($" The body is estimated at {Shown.Body(body.Median)} ({Shown.Spread(body)}).")
            : "";
        return Say($"{Sentence.Capital(Read(moment.Reading, moment.Run))} at {Shown.Dose(moment.DoseBefore)}.{now}");
    }

    /// <summary>What was advised.</summary>
    public static string Advised(ReplayMoment moment)
    {
        if (moment.Outcome is not { } outcome)
        {
            return Say("Not judged.");
        }

        if (outcome.Advice is not { } advice)
        {
            return Say($"No advice: {AdviceWords.Refusal(outcome)}.");
        }

        var expected = AdviceWords.Expected(advice.Body) is { } e ? Say($" Expect {e}, over {Shown.Chance(advice.Body.ChanceOver)}.") : "";
        var headline = AdviceWords.Headline(advice, " ").First();
        return $"{Sentence.Ended(headline)}{expected} {ReasonWords.Of(advice)}";
    }

    /// <summary>What was done.</summary>
    public static string Done(ReplayMoment moment)
    {
        if (moment.Done.IsEmpty)
        {
            return Say("Nothing more: the run ends here.");
        }

        var parts = moment.Done.Select(e => Part(e, moment.Run)).Where(p => p.Length > 0).ToList();
        return $"{Sentence.Capital(string.Join(", ", parts))}.";
    }

    /// <summary>How what was done compares with what was advised; empty where there is nothing to say.</summary>
    public static string Compared(ReplayMoment moment)
    {
        var promised = moment.Poured is { } poured
            ? Say($" Those grams were expected to give {Shown.Spread(poured.Expected)} mPa·s: in band {Shown.Chance(poured.ChanceInBand)}, "
                + $"over {Shown.Chance(poured.ChanceOver)} ({ReasonWords.OneIn(poured.ChanceOver)}).")
            : "";
        return moment.Match switch
        {
            ReplayMatch.AsAdvised => Say("As advised."),
            ReplayMatch.More => Say("More than advised.") + promised,
            ReplayMatch.Less => Say("Less than advised.") + promised,
            ReplayMatch.DosedAgainstAdvice => Say("Thickener was added where none was advised.") + promised,
            ReplayMatch.Otherwise => Say("Not what was advised."),
            _ => "",
        };
    }

    private static IEnumerable<string> Row(string name, string text, int columns)
        => Paragraph.Of(text, columns - NameColumns).Select((l, i) => (i == 0 ? name : "").PadRight(NameColumns) + l);

    private static string Part(Entry entry, Run run) => entry switch
    {
        Entry.Dosed dosed => Say($"{Shown.Grams(dosed.Poured)} {dosed.Thickener} added"),
        Entry.LetDown letDown => Say($"{Shown.Grams(letDown.Base)} of base added"),
        Entry.Watered watered => Say($"{Shown.Grams(watered.Water)} of water added"),
        Entry.TakenOut taken => Say($"a sample of {Shown.Grams(taken.Sample)} was taken out"),
        Entry.Measured measured => Read(measured.Reading, run),
        _ => "",
    };

    private static string Read(Reading reading, Run run)
    {
        var value = reading.Value is { } read ? Value(read, run.MethodInForce) : null;
        return (value, reading.Wait) switch
        {
            ({ } body, { } wait) => Say($"read {body} after {Shown.Duration(wait)}"),
            ({ } body, null) => Say($"read {body}", "done"),
            (null, { } wait) => Say($"read without a body after {Shown.Duration(wait)}"),
            _ => Say("read without a body"),
        };
    }

    private static string Value(InstrumentValue value, Method method) => value.Speed is not null
        ? ReadingWords.Value(value)
        : method.Scales[0].IsTime ? Say($"{ReadingWords.Value(value)} s in the cup") : $"{ReadingWords.Value(value)} {method.Unit}";
}

