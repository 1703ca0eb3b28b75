using System.Text;
using Viscolog.Output;

namespace Viscolog.Cli.Calls;

/// <summary>Takes UTF-8 in pieces and gives it on as text.</summary>
internal sealed class TextPieces(Action<string> take) : Taker
{
    private readonly Decoder _decoder = Encoding.UTF8.GetDecoder();
    private char[] _text = [];

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
}
