namespace Viscolog.Output;

/// <summary>
/// Keeps what a long job throws away from piling up. The runtime lets young garbage grow with the processor's cache, to hundreds of
/// megabytes on a large machine; what goes through millions of rows asks here now and then.
/// </summary>
internal static class FlatMemory
{
    private const long Most = 64L << 20;

    private static long _swept;

    /// <summary>Has young garbage taken away where enough was made since the last time.</summary>
    public static void Keep()
    {
        var made = GC.GetTotalAllocatedBytes(precise: false);
        if (made - Interlocked.Read(ref _swept) > Most)
        {
            Interlocked.Exchange(ref _swept, made);
            GC.Collect(1, GCCollectionMode.Forced, blocking: true);
        }
    }
}
