namespace Viscolog.Cli;

/// <summary>What the process says to a script when it ends.</summary>
internal enum ExitCode
{
    Done = 0,
    WrongCall = 1,
    InputRefused = 2,
    Fault = 70,
}
