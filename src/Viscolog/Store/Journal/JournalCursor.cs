namespace Viscolog.Store.Journal;

/// <summary>Goes through a journal line by line without holding more of it than a line and what was read ahead.</summary>
internal sealed class JournalCursor(Stream stream)
{
    private const int ReadAhead = 1 << 20;

    private byte[] _buffer = new byte[ReadAhead];
    private long _bufferAt;
    private int _filled;
    private int _start;
    private int _end;
    private int _next;

    /// <summary>Where the line begins in the file.</summary>
    public long Offset => _bufferAt + _start;

    /// <summary>Where the next line begins.</summary>
    public long NextOffset => _bufferAt + _next;

    /// <summary>Whether the line has its line break.</summary>
    public bool IsEnded => _next > _end;

    /// <summary>The line without its line break.</summary>
    public ReadOnlySpan<byte> Line => _buffer.AsSpan(_start, _end - _start);

    /// <summary>The line with the checksum of the line before it in front.</summary>
    public ReadOnlySpan<byte> Chained => _buffer.AsSpan(LinkStart.._end);

    private int LinkStart => Math.Max(0, _start - JournalLine.LinkLength);

    /// <summary>Goes to the next line; false at the end.</summary>
    public bool MoveNext()
    {
        _start = _next;
        var searched = _start;
        while (true)
        {
            var found = _buffer.AsSpan(searched, _filled - searched).IndexOf((byte)'\n');
            if (found >= 0)
            {
                _end = searched + found;
                _next = _end + 1;
                return true;
            }

            searched = _filled;
            var moved = MakeRoom();
            searched -= moved;
            var read = stream.Read(_buffer, _filled, _buffer.Length - _filled);
            if (read == 0)
            {
                _end = _next = _filled;
                return _end > _start;
            }

            _filled += read;
        }
    }

    /// <summary>Moves what is still needed to the front, so that there is room behind it; says how far.</summary>
    private int MakeRoom()
    {
        var keep = LinkStart;
        if (keep > 0)
        {
            _buffer.AsSpan(keep, _filled - keep).CopyTo(_buffer);
            _bufferAt += keep;
            _start -= keep;
            _filled -= keep;
        }

        if (_filled == _buffer.Length)
        {
            Array.Resize(ref _buffer, _buffer.Length * 2);
        }

        return keep;
    }
}
