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
            : FormattableString.Invariant($"{judged} of {readings} readings are judged, those before an addition first, ")
                + (
                    readings > ReplaySample.Furthest
                        ? FormattableString.Invariant($"of the first {ReplaySample.Furthest}")
                        : "spread over the run");
    }

    /// <summary>The whole of it, in lines of so many columns.</summary>
    public static Func<int, IEnumerable<string>> Lines(Run run, IReadOnlyList<ReplayMoment> moments) => columns =>
    [
        .. Sampled(run) is { } sampled ? Paragraph.Of(sampled, columns) : [],
        .. moments.SelectMany(m => (string[])
        [
            "",
            FormattableString.Invariant($"Reading {m.Number}"),
            .. Row("known", Known(m), columns),
            .. m.Outcome is null ? [] : Row("advised", Advised(m), columns),
            .. Row("done", $"{Done(m)} {Compared(m)}".TrimEnd(), columns),
        ]),
    ];

    /// <summary>What was known: the last reading, and what the readings so far say of the body.</summary>
    public static string Known(ReplayMoment moment)
    {
        var now = moment.Advice?.Body.Now is { } body
            ? $" The body is estimated at {Shown.Body(body.Median)} ({Shown.Spread(body)})."
            : "";
        return $"{Sentence.Capital(Read(moment.Reading, moment.Run))} at {Shown.Dose(moment.DoseBefore)}.{now}";
    }

    /// <summary>What was advised.</summary>
    public static string Advised(ReplayMoment moment)
    {
        if (moment.Outcome is not { } outcome)
        {
            return "Not judged.";
        }

        if (outcome.Advice is not { } advice)
        {
            return $"No advice: {AdviceWords.Refusal(outcome)}.";
        }

        var expected = AdviceWords.Expected(advice.Body) is { } e ? $" Expect {e}, over {Shown.Chance(advice.Body.ChanceOver)}." : "";
        var headline = AdviceWords.Headline(advice, " ").First();
        return $"{Sentence.Ended(headline)}{expected} {ReasonWords.Of(advice)}";
    }

    /// <summary>What was done.</summary>
    public static string Done(ReplayMoment moment)
    {
        if (moment.Done.IsEmpty)
        {
            return "Nothing more: the run ends here.";
        }

        var parts = moment.Done.Select(e => Part(e, moment.Run)).Where(p => p.Length > 0).ToList();
        return $"{Sentence.Capital(string.Join(", ", parts))}.";
    }

    /// <summary>How what was done compares with what was advised; empty where there is nothing to say.</summary>
    public static string Compared(ReplayMoment moment)
    {
        var promised = moment.Poured is { } poured
            ? $" Those grams were expected to give {Shown.Spread(poured.Expected)} mPa·s: in band {Shown.Chance(poured.ChanceInBand)}, "
                + $"over {Shown.Chance(poured.ChanceOver)} ({ReasonWords.OneIn(poured.ChanceOver)})."
            : "";
        return moment.Match switch
        {
            ReplayMatch.AsAdvised => "As advised.",
            ReplayMatch.More => "More than advised." + promised,
            ReplayMatch.Less => "Less than advised." + promised,
            ReplayMatch.DosedAgainstAdvice => "Thickener was added where none was advised." + promised,
            ReplayMatch.Otherwise => "Not what was advised.",
            _ => "",
        };
    }

    private static IEnumerable<string> Row(string name, string text, int columns)
        => Paragraph.Of(text, columns - NameColumns).Select((l, i) => (i == 0 ? name : "").PadRight(NameColumns) + l);

    private static string Part(Entry entry, Run run) => entry switch
    {
        Entry.Dosed dosed => $"{Shown.Grams(dosed.Poured)} {dosed.Thickener} added",
        Entry.LetDown letDown => $"{Shown.Grams(letDown.Base)} of base added",
        Entry.Watered watered => $"{Shown.Grams(watered.Water)} of water added",
        Entry.TakenOut taken => $"a sample of {Shown.Grams(taken.Sample)} was taken out",
        Entry.Measured measured => Read(measured.Reading, run),
        _ => "",
    };

    private static string Read(Reading reading, Run run)
    {
        var method = run.MethodInForce;
        var unit = reading.Value?.Speed is not null ? "" : method.Scales[0].IsTime ? " s in the cup" : " " + method.Unit;
        var value = reading.Value is { } v ? $"read {ReadingWords.Value(v)}{unit}" : "read without a body";
        return reading.Wait is { } wait ? $"{value} after {Shown.Duration(wait)}" : value;
    }
}

