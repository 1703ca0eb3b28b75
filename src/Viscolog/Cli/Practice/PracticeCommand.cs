using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Store;

namespace Viscolog.Cli.Practice;

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
        command.SetAction(parsed => Screen(new(parsed, common, terminal)));
        return command;
    }

    private static int Screen(Invocation call)
    {
        if (call.Surroundings.Obstacle() is not null)
        {
            call.Terminal.Error("the practice screen needs a terminal; here use the forms: viscolog practice demo, play, scores, replay (viscolog practice --help tells more)");
            return (int)ExitCode.WrongCall;
        }

        switch (PracticeLog.Open(call.Log, call.Clock))
        {
            case LogOutcome.Opened { Log: var log }:
                using (log)
                {
                    return call.Ended(call.Surroundings.PracticeScreens(log, call.Look()));
                }

            case LogOutcome.Absent absent:
                return (int)call.LogFailed(absent.Reason);
            case LogOutcome.Busy busy:
                return (int)call.LogFailed(busy.Reason);
            case LogOutcome.Refused refused:
                return (int)call.LogFailed(refused.Reason);
            default:
                throw new InvalidOperationException("not a case of the closed set");
        }
    }
}
