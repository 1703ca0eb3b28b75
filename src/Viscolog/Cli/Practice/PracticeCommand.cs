using System.CommandLine;
using Viscolog.Cli.Calls;
using Viscolog.Store;

namespace Viscolog.Cli.Practice;

/// <summary>Practice pots: a screen to play, a demonstration, a class's scores, and real runs step by step.</summary>
internal sealed class PracticeCommand : CalledCommand
{
    public PracticeCommand()
        : base(
            "practice",
            "Practise on pots with a hidden curve; the log is never touched. Without a subcommand it opens the practice screen.",
            PracticeDemoCommand.Example)
    {
        foreach (var form in (Command[])
        [
            new PracticeDemoCommand(), new PracticePlayCommand(), new PracticeScoresCommand(), new PracticeReplayCommand(),
            new PracticeServeCommand(),
        ])
        {
            Add(form);
        }
    }

    protected override ExitCode Run(Invocation call)
    {
        if (call.Surroundings.Obstacle() is not null)
        {
            call.Terminal.Fail("the practice screen needs a terminal; here use the subcommands: viscolog practice demo, play, "
                + "scores, replay (see viscolog practice --help)");
            return ExitCode.WrongCall;
        }

        if (!PracticeLog.Open(call.Log, call.Clock).Is(out var log, out var trouble))
        {
            return call.LogFailed(trouble);
        }

        using (log)
        {
            call.Terminal.EndWork();
            return call.Ended(call.Surroundings.PracticeScreens(log, call.Look()));
        }
    }
}
