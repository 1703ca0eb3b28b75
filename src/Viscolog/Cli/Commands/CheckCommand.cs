using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Checking;
using Viscolog.Text;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A batch against its specification.</summary>
internal sealed class CheckCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- check sample-runs/checks/lantern-gel-21.csv --low 7650 --high 10350";

    private readonly Argument<string> run = new("RUN") { Description = RunSource.Description };
    private readonly SpecificationOptions specification = new();
    private readonly Option<string[]> history = new("--history") { HelpName = "PATH", Description = "Earlier runs in place of the log's: a run file, or a folder of them; may be given more than once.", Arity = ArgumentArity.OneOrMore };

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("check", "Check a batch: value with uncertainty, verdict, what to do. Ends with 3 where the verdict is reject.");
        command.Add(run);
        specification.AddTo(command);
        command.Add(history);
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        if (specification.Conflict(call) is { } conflict)
        {
            return call.Wrong(conflict);
        }

        if (RunSource.Read(call.Value(run), call.Value(history) is { Length: > 0 } paths ? paths : null, call, out var code) is not { } named)
        {
            return code;
        }

        if (specification.Find(ref named, call, out code) is not { } wanted)
        {
            return code;
        }

        var today = DateOnly.FromDateTime(call.Clock.GetLocalNow().Date);
        switch (BatchChecks.Of(named.Bench.Request(named.File.Run, wanted, named.Earlier, today)))
        {
            case CheckOutcome.Refused refused:
                return call.Refuse($"{named.Name}: {refused.Reason}");
            case CheckOutcome.Checked { Check: var check }:
                if (call.Json)
                {
                    call.Print(CheckAnswer.Of(check, today, named.Warnings));
                }
                else
                {
                    call.Warn(named.Warnings);
                    CheckText.Write(call.Terminal, check, today);
                }

                return check.Verdict is Verdict.Reject ? ExitCode.Rejected : ExitCode.Done;
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }
}

/// <summary>A check as a person reads it.</summary>
internal static class CheckText
{
    public static void Write(CallOutput terminal, BatchCheck check, DateOnly today)
    {
        terminal.Line($"{RunTitle.Of(check.Run)} · {check.Specification.Name}{(check.Body is { } b ? ": " + AdviceWords.Band(b.Band) : "")}");
        terminal.Line();
        terminal.Emphasized("  " + CheckWords.Headline(check.Verdict));
        Row(terminal, "", CheckWords.Next(check.Next));
        terminal.Line();
        foreach (var (name, text) in CheckWords.Rows(check, today))
        {
            Row(terminal, name, text);
        }

        foreach (var warning in check.Warnings)
        {
            Row(terminal, "Note", warning);
        }

        if (check.Next is NextStep.Correct { Advice: var advice })
        {
            terminal.Line();
            Row(terminal, "Safety", string.Join(' ', advice.Cautions));
        }
    }

    private static void Row(CallOutput terminal, string name, string text)
    {
        var indent = name.Length == 0 ? "  " : "  " + name.PadRight(17);
        foreach (var line in Paragraph.Of(text, terminal.Width - indent.Length))
        {
            terminal.Line(indent + line);
            indent = new(' ', indent.Length);
        }
    }
}
