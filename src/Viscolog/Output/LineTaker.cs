using System.Buffers;
using System.Text;

namespace Viscolog.Output;

/// <summary>Gives UTF-8 text on as whole lines, many at a time; what stands behind the last line's end when it is closed.</summary>
/// <param name="take">Takes them.</param>
internal sealed class LineTaker(Action<string> take) : Taker
{
    private const int Enough = 1 << 16;

    private readonly ArrayBufferWriter<byte> _open = new(2 * Enough);

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        _open.Write(buffer);
        if (_open.WrittenCount >= Enough)
        {
            Give(_open.WrittenSpan.LastIndexOf((byte)'\n') + 1);
        }
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            Give(_open.WrittenCount);
        }

        base.Dispose(disposing);
    }

    private void Give(int length)
    {
        if (length == 0)
        {
            return;
        }

        take(Encoding.UTF8.GetString(_open.WrittenSpan[..length]));
        var rest = _open.WrittenSpan[length..].ToArray();
        _open.ResetWrittenCount();
        _open.Write(rest);
        FlatMemory.Keep();
    }
}
