using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Checking;
using Viscolog.Wording;

namespace Viscolog.Cli.Commands;

/// <summary>A batch against its specification.</summary>
internal sealed class CheckCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- check sample-runs/checks/lantern-gel-21.csv --low 7650 "
        + "--high 10350";

    private readonly Argument<string> _run = RunSource.Argument();
    private readonly TargetOptions _target = new();
    private readonly SpecificationOptions _specification = new();
    private readonly Option<string[]> _history = RunSource.History();

    public CheckCommand()
        : base("check", "Check a batch: value with uncertainty, verdict, what to do. Ends with 3 if the verdict is reject, with 5 if it is "
            + "undecided.", Example)
        => Take([_run, .. _specification.All, .. _target.All, _history]);

    protected override ExitCode Run(Invocation call)
    {
        var conflict = _specification.AreGiven(call) && _target.AreGiven(call)
            ? "give --target and --tolerance, or --spec, or --low and --high, one of them"
            : _specification.Conflict(call);
        if (conflict is not null)
        {
            return call.Wrong(conflict);
        }

        if (RunSource.Read(call.Value(_run), call.Value(_history), call, out var code, _target) is not { } named
            || (Asked(named, call) ?? _specification.Find(ref named, call, out code)) is not { } wanted)
        {
            return code;
        }

        var outcome = BatchChecks.Of(named.Bench.Request(named.File.Run, wanted, named.Earlier, call.Today));
        if (outcome is not CheckOutcome.Checked { Check: var check })
        {
            return call.Refuse($"{named.Name}: {CheckRemarks.Of(((CheckOutcome.Refused)outcome).Reason)}");
        }

        call.Answer(
            () => CheckAnswer.Of(check, call.Today, named.Warnings), terminal => CheckText.Write(terminal, check, call.Today),
            named.Warnings);
        return check.Verdict switch
        {
            Verdict.Reject => ExitCode.Rejected,
            Verdict.Undecided => ExitCode.Undecided,
            _ => ExitCode.Done,
        };
    }

    private Specification? Asked(NamedRun named, Invocation call)
        => _target.AreGiven(call) && _target.InForce(named.File, call) is { } target
            ? new("target stated for this batch") { Body = target, ReferenceTemperature = named.File.Run.ReferenceTemperature }
            : null;
}

/// <summary>A check as a person reads it.</summary>
internal static class CheckText
{
    private const int Indent = 19;

    public static void Write(CallOutput terminal, BatchCheck check, DateOnly today)
    {
        terminal.Line($"{RunTitle.Of(check.Run)} · "
            + $"{Named(check.Specification)}{(check.Body is { } b ? ": " + AdviceWords.Band(b.Band) : "")}");
        terminal.Line();
        terminal.Emphasized("  " + CheckWords.Headline(check.Verdict));
        terminal.Wrapped(CheckWords.Next(check), "  ");
        terminal.Line();
        foreach (var (name, text) in CheckWords.Rows(check, today))
        {
            terminal.Row(name, text, Math.Max(Indent, name.Length + 2));
        }

        foreach (var warning in check.Warnings)
        {
            terminal.Row(Say("Note", "remark"), CheckRemarks.Of(warning), Indent);
        }

        if (check.Next is NextStep.Correct { Advice: var advice })
        {
            terminal.Line();
            terminal.Row(Say("Safety"), CautionWords.Of(advice.Cautions), Indent);
        }
    }

    /// <summary>The specification's name, or where its limits come from.</summary>
    private static string Named(Specification specification) => specification.Name switch
    {
        "target stated for this batch" => Say("target stated for this batch"),
        "limits stated for this batch" => Say("limits stated for this batch"),
        var name => name,
    };
}
