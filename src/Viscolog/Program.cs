using System.Text;
using Viscolog.Cli;
using Viscolog.Cli.Calls;
using Viscolog.Tui;

var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var error = new StreamWriter(Console.OpenStandardError(), utf8) { NewLine = "\n", AutoFlush = true };
var surroundings = Surroundings.OfProcess with
{
    Obstacle = () => TuiSession.Obstacle(Environment.GetEnvironmentVariable),
    Screens = (log, run, look) =>
    {
        var end = TuiSession.Run(log, run, new(look.IsAscii, look.HasColor, look.IsSixteenColors));
        return new(end.Fault, end.Signal);
    },
    PracticeScreens = (practice, look) =>
    {
        var end = TuiSession.RunPractice(practice, new(look.IsAscii, look.HasColor, look.IsSixteenColors));
        return new(end.Fault, end.Signal);
    },
};
try
{
    using var output = new StreamWriter(Console.OpenStandardOutput(), utf8) { NewLine = "\n" };
    return CommandLine.Run(args, CallOutput.OfProcess(output, error), surroundings, output);
}
catch (IOException e)
{
    // A full disk or a closed stream shows itself when the last of the output is written.
    error.WriteLine($"the output can't be written: {e.Message}");
    return (int)ExitCode.WrongCall;
}
