using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli;

/// <summary>Advice as a person reads it at arm's length.</summary>
internal static class AdviceText
{
    public static void Write(CallOutput terminal, Run run, Advice advice)
    {
        terminal.Line($"{RunTitle.Of(run)} · target {AdviceWords.Band(advice.Band)}{(advice.Pair is { } aim ? ", " + AdviceWords.Strings(aim) : "")}");
        terminal.Line();
        foreach (var line in AdviceWords.Headline(advice))
        {
            terminal.Emphasized("  " + line);
        }

        terminal.Line();
        Row(terminal, "Now", advice.Now is { } now
            ? $"{Shown.Body(now.Median)} ({Shown.Spread(now)}) at {Shown.Dose(advice.DoseNow)} ({Shown.Share(advice.ShareNow)} of total)"
            : "not read yet");
        if (AdviceWords.Expected(advice.Action) is { } expected)
        {
            Row(terminal, "Expect", $"{Shown.Body(expected.Median)} ({Shown.Spread(expected)}), 9 times in 10");
        }

        if (advice.Pair is { } pair)
        {
            WritePair(terminal, advice, pair);
        }
        else if (advice.Now is not null)
        {
            Row(terminal, "In band", Shown.Chance(advice.ChanceInBand));
            Row(terminal, "Over", $"{Shown.Chance(advice.ChanceOver)} ({Explanation.OneIn(advice.ChanceOver)})");
        }

        Row(terminal, "Why", advice.Why);
        Row(terminal, "Limit", $"{Shown.Dose(advice.Limit.Dose)}: {advice.Limit.Why}");
        if (advice.WhatIf is { } asked)
        {
            Row(terminal, "If", $"{Shown.Grams(asked.Poured)} went in instead (dose {Shown.Dose(asked.After)}): {Shown.Body(asked.Expected.Median)} ({Shown.Spread(asked.Expected)}), 9 times in 10; in band {Shown.Chance(asked.ChanceInBand)}, over {Shown.Chance(asked.ChanceOver)} ({Explanation.OneIn(asked.ChanceOver)}). {string.Join(' ', asked.Notes)}");
        }

        foreach (var warning in advice.Warnings)
        {
            Row(terminal, "Note", warning);
        }

        terminal.Line();
        Row(terminal, "Safety", string.Join(' ', advice.Cautions));
    }

    private static void WritePair(CallOutput terminal, Advice advice, PairAdvice pair)
    {
        Row(terminal, "String", pair.Now is { } now ? $"{Shown.Length(now.Median)} ({Shown.Spread(now)}) now; {pair.OtherThickener} at {Shown.Dose(pair.OtherDoseNow)}" : "not read yet");
        if (pair.Expected is { } expected)
        {
            Row(terminal, "Expect", $"{Shown.Length(expected.Median)} of string ({Shown.Spread(expected)}), 9 times in 10");
        }

        if (advice.Now is not null && pair.Now is not null)
        {
            Row(terminal, "In band", $"both {Shown.Chance(pair.ChanceBoth)}; body {Shown.Chance(advice.ChanceInBand)}, string {Shown.Chance(pair.ChanceInBand)}");
            Row(terminal, "Over", $"body {Shown.Chance(advice.ChanceOver)} ({Explanation.OneIn(advice.ChanceOver)}), string {Shown.Chance(pair.ChanceOver)} ({Explanation.OneIn(pair.ChanceOver)})");
        }

        if (AdviceWords.Plan(pair) is { } plan)
        {
            Row(terminal, "Plan", $"{plan}; this addition is the first of it");
        }
    }

    private static void Row(CallOutput terminal, string name, string text)
    {
        foreach (var line in Paragraph.Of(text, terminal.Width - 12))
        {
            terminal.Line($"  {name,-8}  {line}");
            name = "";
        }
    }
}
