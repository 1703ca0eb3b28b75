using Viscolog.Core.Advising;
using Viscolog.Core.Pots;

namespace Viscolog.Cli;

/// <summary>Advice as a person reads it at arm's length.</summary>
internal static class AdviceText
{
    public static void Write(Terminal terminal, Run run, Advice advice)
    {
        terminal.Line($"{RunTitle.Of(run)} · target {TargetOptions.Words(advice.Band)}");
        terminal.Line();
        foreach (var line in Headline(advice))
        {
            terminal.Emphasized("  " + line);
        }

        terminal.Line();
        Row(terminal, "Now", advice.Now is { } now
            ? $"{Shown.Body(now.Median)} ({Shown.Spread(now)}) at {Shown.Dose(advice.DoseNow)} ({Shown.Share(advice.ShareNow)} of total)"
            : "not read yet");
        if (Expected(advice.Action) is { } expected)
        {
            Row(terminal, "Expect", $"{Shown.Body(expected.Median)} ({Shown.Spread(expected)}), 9 times in 10");
        }

        if (advice.Now is not null)
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

    private static IEnumerable<string> Headline(Advice advice) => advice.Action switch
    {
        BenchAction.Add add =>
        [
            $"ADD {Shown.Grams(add.Poured)} {advice.Thickener}   (dose {Shown.Dose(advice.DoseNow)} → {Shown.Dose(add.After)})",
            $"Stir it in well, let it stand {Shown.Duration(add.Standing)}, then read.",
        ],
        BenchAction.Wait wait => [$"WAIT {Shown.Duration(wait.More)} more, then read again. Add nothing yet."],
        BenchAction.Stop => ["STOP. It is in band: add nothing more."],
        BenchAction.LetDown letDown => [$"LET DOWN with {Shown.Grams(letDown.Base)} of base   (dose {Shown.Dose(advice.DoseNow)} → {Shown.Dose(letDown.After)})", "Stir it in well, then read."],
        BenchAction.GiveUp giveUp => [$"STOP ADDING. {giveUp.Remedy}"],
        BenchAction.Measure { Standing: { } standing } => [$"READ the pot after {Shown.Duration(standing)} of standing. Add nothing yet."],
        BenchAction.Measure => ["READ the pot. Add nothing yet."],
        var other => throw new ArgumentOutOfRangeException(nameof(advice), other, "not a case of the closed set"),
    };

    private static Core.Quantities.Estimate? Expected(BenchAction action) => action switch
    {
        BenchAction.Add add => add.Expected,
        BenchAction.LetDown letDown => letDown.Expected,
        _ => null,
    };

    private static void Row(Terminal terminal, string name, string text)
    {
        foreach (var line in Paragraph.Of(text, terminal.Width - 12))
        {
            terminal.Line($"  {name,-8}  {line}");
            name = "";
        }
    }
}
