using Viscolog.Cli;
using Viscolog.Cli.Calls;
using Viscolog.Tui;

using var console = WindowsConsole.Ready();
using var error = StandardStreams.Error();
using var output = StandardStreams.Output();
if (output is null)
{
    error.WriteLine("standard output is closed, nothing was done; send it to a file, or to /dev/null");
    return (int)ExitCode.WrongCall;
}

var surroundings = Surroundings.OfProcess with
{
    Obstacle = () => TuiSession.Obstacle(Environment.GetEnvironmentVariable),
    Screens = (log, run, look) =>
    {
        var screens = TuiLook.Of(look.IsAscii, look.HasColor, look.IsSixteenColors, look.Ground, look.HasMouse) with
        {
            Instruments = look.Instruments,
            TakesReadings = look.TakesReadings,
            Post = look.Post,
        };
        var end = TuiSession.Run(log, run, screens);
        return new(end.Fault, end.Signal);
    },
    PracticeScreens = (practice, look) =>
    {
        var end = TuiSession.RunPractice(
            practice, TuiLook.Of(look.IsAscii, look.HasColor, look.IsSixteenColors, look.Ground, look.HasMouse));
        return new(end.Fault, end.Signal);
    },
};
return CommandLine.Run(WindowsConsole.Expanded(args), CallOutput.OfProcess(output, error), surroundings);
