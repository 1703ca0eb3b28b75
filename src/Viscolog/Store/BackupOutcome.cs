namespace Viscolog.Store;

/// <summary>What came of making a backup or putting one back. The set of cases is closed.</summary>
internal abstract record BackupOutcome
{
    private BackupOutcome()
    {
    }

    /// <summary>A backup was made and read through.</summary>
    /// <param name="Path">Where it is.</param>
    /// <param name="Lines">Journal lines that it holds.</param>
    /// <param name="Deleted">Older backups that were deleted.</param>
    internal sealed record Made(string Path, long Lines, int Deleted) : BackupOutcome;

    /// <summary>A backup was put in place.</summary>
    /// <param name="Lines">Journal lines that it holds.</param>
    /// <param name="Aside">The folder with the files that were there before; null where there were none.</param>
    internal sealed record Restored(long Lines, string? Aside) : BackupOutcome;

    /// <summary>Nothing was done.</summary>
    /// <param name="Reason">Why, and what to do.</param>
    internal sealed record Failed(string Reason) : BackupOutcome;
}
