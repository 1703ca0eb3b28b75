namespace Viscolog.Output;

/// <summary>Tells whether what is written says the same as a file.</summary>
/// <param name="other">The file, from where it stands.</param>
internal sealed class SameTaker(Stream other) : Taker
{
    private byte[] _there = [];
    private bool _isSame = true;

    /// <summary>Whether all that was written is all that the file says.</summary>
    public bool IsSame => _isSame && other.ReadByte() < 0;

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        _there = _there.Length < buffer.Length ? new byte[buffer.Length] : _there;
        var there = _there.AsSpan(0, buffer.Length);
        _isSame = _isSame
            && other.ReadAtLeast(there, there.Length, throwOnEndOfStream: false) == there.Length
            && there.SequenceEqual(buffer);
    }
}
