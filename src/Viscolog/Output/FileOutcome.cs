namespace Viscolog.Output;

/// <summary>What became of a file that was to be written. The set of cases is closed.</summary>
internal abstract record FileOutcome
{
    private FileOutcome()
    {
    }

    /// <summary>The file is there, whole.</summary>
    /// <param name="Path">Where.</param>
    internal sealed record Written(string Path) : FileOutcome;

    /// <summary>Nothing was written.</summary>
    /// <param name="Reason">One line that says what to do.</param>
    internal sealed record Refused(string Reason) : FileOutcome;
}
