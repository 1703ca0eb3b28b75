using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Cli.Json;
using Viscolog.Core.Practice;
using Viscolog.Wording;

namespace Viscolog.Cli.Practice;

/// <summary>A real run step by step: what was known, what was advised, what was done.</summary>
internal sealed class PracticeReplayCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- practice replay sample-runs/harbour-gel-02-over.csv";

    private readonly Argument<string> run = new("RUN") { Description = RunSource.Description };
    private readonly TargetOptions target = new();
    private readonly Option<bool> stepwise = new("--stepwise") { Description = "Stop after each step; Enter goes on." };

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("replay", "Go through a real run reading by reading: what was known then, what that advises, what was done. The run stays as it is.");
        command.Add(run);
        target.AddTo(command);
        command.Add(stepwise);
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        if (RunSource.Read(call.Value(run), null, call, out var code) is not { File: var file } named)
        {
            return code;
        }

        var terminal = call.Terminal;
        var band = target.Band(file, call);
        if (call.Json)
        {
            call.Print(new ReplayAnswer(file.Run.Name, [.. RunReplays.Of(file.Run, band, named.Earlier).Select(ReplayAnswer.Moment.Of)], named.Warnings));
            return ExitCode.Done;
        }

        call.Warn(named.Warnings);
        terminal.Line(RunTitle.Of(file.Run) + (band is null ? "" : $" · target {AdviceWords.Band(band)}"));
        using var stop = new StopSignal();
        var any = false;
        foreach (var moment in RunReplays.Of(file.Run, band, named.Earlier))
        {
            any = true;
            terminal.Line();
            terminal.Emphasized(FormattableString.Invariant($"Reading {moment.Number}"));
            PracticeText.Lines(terminal, ReplayWords.Known(moment), "known", terminal.Width);
            PracticeText.Lines(terminal, ReplayWords.Advised(moment), "advised", terminal.Width);
            PracticeText.Lines(terminal, $"{ReplayWords.Done(moment)} {ReplayWords.Compared(moment)}".TrimEnd(), "done", terminal.Width);
            if (stop.Token.IsCancellationRequested)
            {
                return ExitCode.Stopped;
            }

            if (call.Value(stepwise))
            {
                terminal.Flush();
                call.Note("Enter goes on");
                call.Surroundings.NextLine();
            }
        }

        return any ? ExitCode.Done : call.Refuse($"{named.Name}: no reading to replay");
    }
}
