namespace Viscolog.Store;

/// <summary>Something in the journal that is not as it was written.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Offset">Where the line begins, in bytes.</param>
/// <param name="What">What is wrong with it.</param>
internal sealed record JournalFault(long Line, long Offset, string What)
{
    /// <summary>All of it in words.</summary>
    public string Text => FormattableString.Invariant($"line {Line} (byte {Offset}) {What}");
}
