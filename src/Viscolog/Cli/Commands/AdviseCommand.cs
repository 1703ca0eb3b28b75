using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Advising;
using Viscolog.Core.Pots;
using Viscolog.Core.Quantities;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>What to do with the pot now.</summary>
internal sealed class AdviseCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- advise sample-runs/lantern-gel-07.csv";

    private readonly Argument<string> _run = RunSource.Argument();
    private readonly TargetOptions _target = new();
    private readonly Option<string[]> _history = RunSource.History();
    private readonly Option<double?> _risk = NumberOption.Create(
        "--risk", "PCT",
        FormattableString.Invariant($"Greatest chance of going over, in %; default {IncrementPolicy.DefaultRisk.Percent}."),
        Settings.RiskRange);

    private readonly Option<double?> _whatIf = NumberOption.Create(
        "--what-if", "GRAMS", "Also say what to expect if so many grams are poured instead.", new("g", 0.0001, 1e6));

    public AdviseCommand()
        : base("advise", "Say what to do with the pot now: how much to add, what to expect, and the risk.", Example)
        => Take([_run, .. _target.All, _history, _risk, _whatIf]);

    protected override ExitCode Run(Invocation call)
    {
        if (RunSource.Read(call.Value(_run), call.Value(_history), call, out var code, _target) is not { } named)
        {
            return code;
        }

        var request = new StudyRequest(named.File.Run) { Band = _target.Band(named.File, call), History = named.Earlier };
        request = request with
        {
            Risk = (call.Value(_risk) ?? call.Settings.Risk) is { } percent ? Percentage.FromPercent(percent) : request.Risk,
            WhatIf = call.Value(_whatIf) is { } grams ? Mass.FromGrams(grams) : null,
        };
        return Study.Of(request) switch
        {
            { Advice: { } advice } => call.Answer(
                () => AdviceAnswer.Of(named.File.Run.Name, advice, named.Warnings),
                terminal => AdviceText.Write(terminal, named.File.Run, advice),
                named.Warnings),
            var outcome => call.Refuse($"{named.Name}: {AdviceWords.Refusal(outcome)}"),
        };
    }
}

/// <summary>Advice as a person reads it at arm's length.</summary>
internal static class AdviceText
{
    private const int Indent = 12;

    public static void Write(CallOutput terminal, Run run, Advice advice)
    {
        terminal.Line(Say($"{RunTitle.Of(run)} · target {AdviceWords.Bands(advice)}"));
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
            terminal.Row(isBody ? Say("Now") : Say("String", "row"), AdviceWords.Now(quantity) is not { } now ? Say("not read yet")
                : isBody ? Say($"{now} at {dose} ({Shown.Share(thickener.ShareNow)} of total)")
                : Say($"{now} now; {thickener.Name} at {dose}"), Indent);
            if (Expected(quantity) is { } expected)
            {
                terminal.Row(Say("Expect"), Say($"{expected}, 9 times in 10"), Indent);
            }
        }

        if (advice.IsAllRead)
        {
            terminal.Row(Say("In band", "row"), AdviceWords.InBand(advice), Indent);
            terminal.Row(Say("Over", "row"), AdviceWords.Over(advice), Indent);
        }

        if (AdviceWords.Plan(advice) is { } plan)
        {
            terminal.Row(Say("Plan"), Say($"{plan}; this addition is the first of it"), Indent);
        }

        terminal.Row(Say("Why"), ReasonWords.Of(advice), Indent);
        terminal.Row(Say("Limit"), $"{Shown.Dose(advice.Thickener.Limit.Dose)}: {LimitWords.Of(advice.Thickener.Limit)}", Indent);
        if (advice.WhatIf is { } asked)
        {
            var expected = Say($"{Shown.Body(asked.Expected.Median)} ({Shown.Spread(asked.Expected)}), 9 times in 10");
            var chances = Say($"in band {Shown.Chance(asked.ChanceInBand)}, over {Shown.Chance(asked.ChanceOver)} "
                + $"({ReasonWords.OneIn(asked.ChanceOver)})");
            var notes = string.Join(' ', ReasonWords.Notes(asked));
            terminal.Row(Say("If"), Say($"{Shown.Grams(asked.Poured)} were added instead (dose {Shown.Dose(asked.After)}): {expected}; "
                + $"{chances}. {notes}"), Indent);
        }

        foreach (var warning in advice.Warnings)
        {
            terminal.Row(Say("Note", "remark"), ReasonWords.Of(warning), Indent);
        }

        terminal.Line();
        terminal.Row(Say("Safety", "row"), CautionWords.Of(advice.Cautions), Indent);
    }

    private static string? Expected(AdvisedQuantity quantity) => quantity is AdvisedQuantity.OfString { Expected: { } length }
        ? Say($"{Shown.Length(length.Median)} of string ({Shown.Spread(length)})")
        : AdviceWords.Expected(quantity);
}
