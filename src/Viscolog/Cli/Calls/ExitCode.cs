namespace Viscolog.Cli.Calls;

/// <summary>What the process says to a script when it ends.</summary>
internal enum ExitCode
{
    Done = 0,
    WrongCall = 1,
    InputRefused = 2,

    /// <summary>The verdict of a check is reject, or a report is no certificate.</summary>
    Rejected = 3,

    LogUnusable = 4,

    /// <summary>The verdict of a check is undecided.</summary>
    Undecided = 5,

    Fault = 70,

    /// <summary>Stopped by the user, as shells report it.</summary>
    Stopped = 130,
}
