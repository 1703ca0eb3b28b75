namespace Viscolog.Store;

/// <summary>What a look at every byte of a journal found.</summary>
/// <param name="Lines">Whole lines that count.</param>
/// <param name="Length">Bytes that they take; what follows was never acknowledged.</param>
/// <param name="LastSum">The checksum of the last of them.</param>
/// <param name="FileLength">Bytes of the file.</param>
/// <param name="Fault">The first damage; null where there is none.</param>
internal sealed record JournalScan(long Lines, long Length, string LastSum, long FileLength, JournalFault? Fault)
{
    /// <summary>Whether the file ends in something that was never written whole.</summary>
    public bool IsTorn => Fault is null && FileLength > Length;
}
