namespace Viscolog.RunFiles;

/// <summary>What came of reading a run file. The set of cases is closed.</summary>
internal abstract record RunFileOutcome
{
    private RunFileOutcome()
    {
    }

    /// <summary>It was read whole.</summary>
    internal sealed record Read(RunFile File) : RunFileOutcome;

    /// <summary>It was refused whole.</summary>
    internal sealed record Refused(Refusal Refusal) : RunFileOutcome;
}
