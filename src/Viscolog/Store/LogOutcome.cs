namespace Viscolog.Store;

/// <summary>What came of opening a log. The set of cases is closed.</summary>
internal abstract record LogOutcome
{
    private LogOutcome(string? trouble) => Trouble = trouble;

    /// <summary>Why it is not open; null where it is.</summary>
    public string? Trouble { get; }

    /// <summary>It is open.</summary>
    /// <param name="Log">The log; to be disposed of.</param>
    internal sealed record Opened(BenchLog Log) : LogOutcome((string?)null);

    /// <summary>There is none.</summary>
    /// <param name="Reason">What to do.</param>
    internal sealed record Absent(string Reason) : LogOutcome(Reason);

    /// <summary>Somebody else has it.</summary>
    /// <param name="Reason">Who, and what to do.</param>
    internal sealed record Busy(string Reason) : LogOutcome(Reason);

    /// <summary>It is damaged, foreign, or can't be reached; nothing was changed.</summary>
    /// <param name="Reason">What is wrong, where, and what to do.</param>
    internal sealed record Refused(string Reason) : LogOutcome(Reason);
}
