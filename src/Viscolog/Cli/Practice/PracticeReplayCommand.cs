using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Practice;
using Viscolog.Wording;

namespace Viscolog.Cli.Practice;

/// <summary>A real run step by step: what was known, what was advised, what was done.</summary>
internal sealed class PracticeReplayCommand : CalledCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- practice replay sample-runs/harbour-gel-02-over.csv";

    private readonly Argument<string> _run = RunSource.Argument();
    private readonly TargetOptions _target = new();
    private readonly Option<string[]> _history = RunSource.History();
    private readonly StepwiseOption _stepwise = new();

    public PracticeReplayCommand()
        : base("replay", "Go through a real run reading by reading: what was known at the time, what the advice would have been, what "
            + "was done. The run is not changed.", Example)
        => Take([_run, .. _target.All, _history, _stepwise.Option]);

    protected override ExitCode Run(Invocation call)
    {
        if (RunSource.Read(call.Value(_run), call.Value(_history), call, out var code, _target) is not { File: var file } named)
        {
            return code;
        }

        IReadOnlyList<string> warnings = ReplayWords.Sampled(file.Run) is { } sampled ? [.. named.Warnings, sampled] : named.Warnings;
        var terminal = call.Terminal;
        var band = _target.Band(file, call);
        if (call.Json)
        {
            call.Print(new ReplayAnswer(
                file.Run.Name, [.. RunReplays.Of(file.Run, band, named.Earlier).Select(ReplayAnswer.Moment.Of)], warnings));
            return ExitCode.Done;
        }

        call.Warn(warnings);
        terminal.Line(RunTitle.Of(file.Run) + (band is null ? "" : " · " + Say($"target {AdviceWords.Band(band)}")));
        using var stop = new StopSignal();
        var any = false;
        foreach (var moment in RunReplays.Of(file.Run, band, named.Earlier))
        {
            any = true;
            terminal.Line();
            terminal.Emphasized(Say($"Reading {moment.Number}"));
            PracticeText.Named(terminal, ReplayWords.Known(moment), Say("known", "replay"));
            if (moment.Outcome is not null)
            {
                PracticeText.Named(terminal, ReplayWords.Advised(moment), Say("advised", "replay"));
            }

            PracticeText.Named(terminal, $"{ReplayWords.Done(moment)} {ReplayWords.Compared(moment)}".TrimEnd(), Say("done", "replay"));
            if (stop.Token.IsCancellationRequested)
            {
                return ExitCode.Stopped;
            }

            _stepwise.Pause(call);
        }

        return any ? ExitCode.Done : call.Refuse($"{named.Name}: no reading to replay");
    }
}
