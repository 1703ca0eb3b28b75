using System.CommandLine;

namespace Viscolog.Cli;

/// <summary>Practice pots: a screen to play, a demonstration, a class's scores, and real runs step by step.</summary>
internal sealed class PracticeCommand
{
    public const string Example = PracticeDemoCommand.Example;

    /// <summary>The forms of the command with their examples; there once the command was created.</summary>
    public Dictionary<Command, string> Forms { get; } = [];

    public Command Create(CommonOptions common, CallOutput terminal)
    {
        Forms[new PracticeDemoCommand().Create(common, terminal)] = PracticeDemoCommand.Example;
        Forms[new PracticePlayCommand().Create(common, terminal)] = PracticePlayCommand.Example;
        Forms[new PracticeScoresCommand().Create(common, terminal)] = PracticeScoresCommand.Example;
        Forms[new PracticeReplayCommand().Create(common, terminal)] = PracticeReplayCommand.Example;
        var command = new Command("practice", "Practise on pots with a hidden curve: nothing of it touches the log. Without a form it opens the practice screen.");
        foreach (var form in Forms.Keys)
        {
            command.Add(form);
        }

        common.AddTo(command);
        command.SetAction(parsed => (int)Screen(new(parsed, common, terminal)));
        return command;
    }

    private static ExitCode Screen(Invocation call)
    {
        call.Terminal.Error(call.Surroundings.Obstacle() ?? "no screen yet");
        return ExitCode.WrongCall;
    }
}
