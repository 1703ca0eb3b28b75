using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>What to do with the pot now.</summary>
internal sealed class AdviseCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- advise sample-runs/lantern-gel-07.csv";

    private readonly Argument<string> run = new("RUN") { Description = RunSource.Description };
    private readonly TargetOptions target = new();
    private readonly Option<string[]> history = new("--history")
    {
        HelpName = "PATH",
        Description = "Earlier runs in place of the log's: a run file, or a folder of them; may be given more than once.",
        Arity = ArgumentArity.OneOrMore,
    };

    private readonly Option<double?> risk = NumberOption.Create(
        "--risk", "PCT", FormattableString.Invariant($"Greatest chance of going over, in %; default {IncrementPolicy.DefaultRisk.Percent}."), 0.01, 50);

    private readonly Option<double?> whatIf = NumberOption.Create(
        "--what-if", "GRAMS", "Also say what to expect if so many grams are poured instead.", 0.0001, 1e6);

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("advise", "Say what to do with the pot now: how much to add, what to expect, and the risk.");
        command.Add(run);
        target.AddTo(command);
        command.Add(history);
        command.Add(risk);
        command.Add(whatIf);
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        if (RunSource.Read(call.Value(run), call.Value(history) is { Length: > 0 } paths ? paths : null, call, out var code) is not { } named)
        {
            return code;
        }

        var file = named.File;
        var request = new StudyRequest(file.Run) { Band = target.Band(file, call), History = named.Earlier };
        if (call.Value(risk) is { } percent)
        {
            request = request with { Risk = Percentage.FromPercent(percent) };
        }

        if (call.Value(whatIf) is { } grams)
        {
            request = request with { WhatIf = Mass.FromGrams(grams) };
        }

        return Study.Of(request) switch
        {
            { Advice: { } advice } => Answer(call, named, advice),
            var outcome => call.Refuse($"{named.Name}: {AdviceWords.Refusal(outcome)}"),
        };
    }

    private static ExitCode Answer(Invocation call, NamedRun named, Advice advice)
    {
        if (call.Json)
        {
            call.Print(AdviceAnswer.Of(named.File.Run.Name, advice, named.Warnings));
            return ExitCode.Done;
        }

        call.Warn(named.Warnings);
        AdviceText.Write(call.Terminal, named.File.Run, advice);
        return ExitCode.Done;
    }
}

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
