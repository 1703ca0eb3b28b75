using System.CommandLine;
using Viscolog.Cli.Json;
using Viscolog.Core.Practice;
using Viscolog.Reports;
using Viscolog.Wording;

namespace Viscolog.Cli;

/// <summary>The demonstration: three players on one pot.</summary>
internal sealed class PracticeDemoCommand
{
    public const string Example = "dotnet run --project src/Viscolog -- practice demo --pot slow --seed 3";

    private readonly PracticeOptions game = new();
    private readonly Option<bool> brief = new("--brief") { Description = "Only what came of it." };
    private readonly Option<string?> output = new("--output", "-o") { HelpName = "FILE", Description = $"Write a file as well: {PracticeFile.Endings}." };
    private readonly Option<bool> force = new("--force") { Description = "Overwrite an existing file." };
    private readonly Option<bool> stepwise = new("--stepwise") { Description = "Stop after each step; Enter goes on." };

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        var command = new Command("demo", "Three players on one pot side by side: one reads too early, one pours 1 % at a time, one does what is advised.");
        game.AddTo(command);
        command.Add(stepwise);
        command.Add(brief);
        command.Add(output);
        command.Add(force);
        common.AddTo(command);
        command.SetAction(parsed => (int)Run(new(parsed, common, terminal)));
        return command;
    }

    private ExitCode Run(Invocation call)
    {
        var demonstration = Demonstration.Of(game.Game(call));
        var players = PracticeWords.Named(demonstration);
        if (call.Json)
        {
            call.Print(PracticeAnswer.Of(players, demonstration.Worst));
        }
        else
        {
            Print(call, demonstration);
        }

        return PracticeText.Write(call, players, call.Value(output), call.Value(force));
    }

    private void Print(Invocation call, Demonstration demonstration)
    {
        var terminal = call.Terminal;
        PracticeText.Head(terminal, demonstration.Game);
        foreach (var path in demonstration.Paths)
        {
            PracticeText.Lines(terminal, PracticeWords.Habit(path.Player), PracticeWords.Name(path.Player), terminal.Width);
        }

        if (call.Value(brief))
        {
            PracticeText.Outcome(terminal, PracticeWords.Named(demonstration));
            return;
        }

        for (var step = 0; step <= demonstration.StepCount; step++)
        {
            PracticeText.Step(terminal, demonstration, step);
            if (call.Value(stepwise))
            {
                terminal.Flush();
                call.Note("Enter goes on");
                call.Surroundings.NextLine();
            }
        }

        PracticeText.Reveal(terminal, PracticeWords.Named(demonstration), OverdoseLesson.Of(demonstration.Worst), "The player that wasted most");
    }
}
