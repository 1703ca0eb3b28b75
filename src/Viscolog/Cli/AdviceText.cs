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
        terminal.Line($"{RunTitle.Of(run)} · target {AdviceWords.Bands(advice)}");
        terminal.Line();
        foreach (var line in AdviceWords.Headline(advice))
        {
            terminal.Emphasized("  " + line);
        }

        terminal.Line();
        foreach (var (quantity, thickener) in advice.Quantities.Zip(advice.Thickeners))
        {
            var isBody = quantity is AdvisedQuantity.OfBody;
            var dose = Shown.Dose(thickener.DoseNow);
            Row(terminal, isBody ? "Now" : "String", AdviceWords.Now(quantity) is { } now
                ? isBody ? $"{now} at {dose} ({Shown.Share(thickener.ShareNow)} of total)" : $"{now} now; {thickener.Name} at {dose}"
                : "not read yet");
            if (Expected(quantity) is { } expected)
            {
                Row(terminal, "Expect", $"{expected}, 9 times in 10");
            }
        }

        if (advice.IsAllRead)
        {
            Row(terminal, "In band", AdviceWords.InBand(advice));
            Row(terminal, "Over", AdviceWords.Over(advice));
        }

        if (AdviceWords.Plan(advice) is { } plan)
        {
            Row(terminal, "Plan", $"{plan}; this addition is the first of it");
        }

        Row(terminal, "Why", advice.Why);
        Row(terminal, "Limit", $"{Shown.Dose(advice.Thickener.Limit.Dose)}: {advice.Thickener.Limit.Why}");
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

    private static string? Expected(AdvisedQuantity quantity) => quantity is AdvisedQuantity.OfString { Expected: { } length }
        ? $"{Shown.Length(length.Median)} of string ({Shown.Spread(length)})"
        : AdviceWords.Expected(quantity);

    private static void Row(CallOutput terminal, string name, string text)
    {
        foreach (var line in Paragraph.Of(text, terminal.Width - 12))
        {
            terminal.Line($"  {name,-8}  {line}");
            name = "";
        }
    }
}
