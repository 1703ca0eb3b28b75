using System.Text;

namespace Viscolog.Store;

/// <summary>Checks a journal's lines and finds where what was acknowledged ends.</summary>
internal sealed class JournalScanner
{
    private readonly JournalCursor _cursor;
    private readonly long _fileLength;
    private readonly IProgress<LogProgress>? _progress;
    private long _number;
    private long? _batchEnd;
    private JournalScan _good;

    private JournalScanner(Stream journal, IProgress<LogProgress>? progress)
    {
        _cursor = new(journal);
        _fileLength = journal.Length;
        _progress = progress;
        _good = new(0, 0, "", _fileLength, null);
    }

    /// <summary>Looks at every byte.</summary>
    /// <param name="journal">The journal from its beginning.</param>
    /// <param name="sealedLength">Bytes that the seal vouches for; 0 without a seal.</param>
    /// <param name="progress">Told from time to time; null where nobody listens.</param>
    public static JournalScan Scan(Stream journal, long sealedLength, IProgress<LogProgress>? progress)
        => new JournalScanner(journal, progress).Scan(sealedLength);

    /// <summary>The records of the first so many bytes, which a scan found whole.</summary>
    /// <exception cref="InvalidDataException">A record can't be read although its checksum holds.</exception>
    public static IEnumerable<LogRecord> Records(Stream journal, long length)
    {
        var cursor = new JournalCursor(journal);
        for (var line = 1L; cursor.NextOffset < length && cursor.MoveNext(); line++)
        {
            yield return LogText.Read(JournalLine.Json(cursor.Line), line);
        }
    }

    private JournalScan Scan(long sealedLength)
    {
        while (_cursor.MoveNext())
        {
            if (Fault() is { } fault)
            {
                var damage = IsTear(sealedLength) ? null : fault;
                return _good with { Fault = damage };
            }

            Take();
        }

        return _fileLength < sealedLength || (_good.Length < sealedLength)
            ? _good with { Fault = new(_number + 1, _cursor.NextOffset, FormattableString.Invariant($"is missing: the log was closed with {sealedLength} bytes, {_fileLength} are left")) }
            : _good;
    }

    private string? What()
    {
        if (!_cursor.IsEnded)
        {
            return "has no end";
        }

        return JournalLine.Fault(_cursor.Chained, _cursor.Line)
            ?? (JournalLine.Number(_cursor.Line) == _number + 1 ? null : FormattableString.Invariant($"is not numbered {_number + 1}"));
    }

    private JournalFault? Fault() => What() is { } what ? new(_number + 1, _cursor.Offset, what) : null;

    private void Take()
    {
        _number++;
        var json = JournalLine.Json(_cursor.Line);
        if (json.StartsWith("{\"kind\":\"batch\""u8) && LogText.Read(json, _number) is LogRecord.BatchBegun batch)
        {
            _batchEnd = _number + batch.Lines + 1;
        }
        else if (IsEnd())
        {
            _batchEnd = null;
        }

        if (_batchEnd is null)
        {
            _good = _good with { Lines = _number, Length = _cursor.NextOffset, LastSum = Encoding.ASCII.GetString(_cursor.Line[^JournalLine.SumLength..]) };
        }

        if ((_number & 0xffff) == 0)
        {
            _progress?.Report(new("checking the journal", _cursor.NextOffset, _fileLength));
        }
    }

    /// <summary>
    /// Whether the bad line at hand is the end of a write that never finished, and not damage to something that was acknowledged. A line
    /// is acknowledged after a flush, and a batch's last line is written after its others were flushed; so after a tear nothing whole can follow.
    /// </summary>
    private bool IsTear(long sealedLength)
    {
        if (_cursor.Offset < sealedLength)
        {
            return false;
        }

        // Inside a batch whose lines were not flushed yet any of them may be bad; its end must look like a write that was cut short. An
        // end that is there is told by its text, since a bad checksum before it spoils its own.
        var torn = (_batchEnd is { } end && _number + 1 < end) || IsBroken();
        while (_cursor.MoveNext())
        {
            torn &= _batchEnd is not null || IsBroken();
            var whole = _batchEnd is null ? JournalLine.Fault(_cursor.Chained, _cursor.Line) is null : JournalLine.Number(_cursor.Line) == _batchEnd && IsEnd();
            if (whole && _cursor.IsEnded)
            {
                return false;
            }
        }

        return torn;
    }

    private bool IsEnd() => JournalLine.Json(_cursor.Line).StartsWith("{\"kind\":\"end\""u8);

    /// <summary>
    /// Whether the line looks like a write that was cut short: without its end, or with blocks that were never filled. One changed bit makes
    /// neither: no byte at a line's beginning or end is one bit away from zero, and it makes no two zeros side by side.
    /// </summary>
    private bool IsBroken()
    {
        var line = _cursor.Line;
        if (line.Length > 0 && (line[0] == 0 || line[^1] == 0 || line.IndexOf("\0\0"u8) >= 0))
        {
            return true;
        }

        // A whole line whose line feed alone was changed is damage.
        return !_cursor.IsEnded && (line.Length < 1 || JournalLine.Fault(_cursor.Chained[..^1], line[..^1]) is not null);
    }
}
