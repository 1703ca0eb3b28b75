namespace Viscolog.Feeds;

/// <summary>A stream that is only read, from its beginning on.</summary>
internal abstract class SourceStream : Stream
{
    /// <summary>Whether what comes first may be the rest of a line.</summary>
    public virtual bool OpensInside => false;

    public sealed override bool CanRead => true;

    public sealed override bool CanSeek => false;

    public sealed override bool CanWrite => false;

    public sealed override long Length => throw new NotSupportedException();

    public sealed override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public sealed override void Flush()
    {
    }

    public sealed override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public sealed override void SetLength(long value) => throw new NotSupportedException();

    public sealed override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
