using System.Text;

namespace Viscolog.Cli.Calls;

/// <summary>Takes UTF-8 in pieces and gives it on as text.</summary>
internal sealed class TextPieces(Action<string> take) : Stream
{
    private readonly Decoder _decoder = Encoding.UTF8.GetDecoder();
    private char[] _text = [];

    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<byte> buffer)
    {
        if (_text.Length <= buffer.Length)
        {
            _text = new char[buffer.Length + 1];
        }

        var length = _decoder.GetChars(buffer, _text, flush: false);
        take(new(_text, 0, length));
    }

    /// <inheritdoc/>
    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    /// <inheritdoc/>
    public override void Flush()
    {
        // Nothing is held back.
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();
}
