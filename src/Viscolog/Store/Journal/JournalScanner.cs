using System.Text;

namespace Viscolog.Store.Journal;

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
    /// <param name="progress">Receives reports from time to time; may be null.</param>
    public static JournalScan Scan(Stream journal, long sealedLength, IProgress<LogProgress>? progress)
        => new JournalScanner(journal, progress).Scan(sealedLength);

    /// <summary>The records of the first so many bytes, which a scan found whole.</summary>
    /// <exception cref="InvalidDataException">A record can't be read although its checksum holds.</exception>
    public static IEnumerable<LogRecord> Records(Stream journal, long length)
    {
        var cursor = new JournalCursor(journal);
        for (var line = 1L; cursor.NextOffset < length && cursor.MoveNext(); line++)
        {
            yield return RecordJson.Read(JournalLine.Json(cursor.Line), line);
        }
    }

    private JournalScan Scan(long sealedLength)
    {
        while (_cursor.MoveNext())
        {
            if (Fault() is { } fault)
            {
                return _good with { Fault = IsTear(sealedLength) ? null : fault };
            }

            Take();
        }

        if (_good.Length >= sealedLength)
        {
            return _good;
        }

        var missing = FormattableString.Invariant($"is missing: the log was closed with {sealedLength} bytes, {_fileLength} are left");
        return _good with { Fault = new(_number + 1, _cursor.NextOffset, missing) };
    }

    private JournalFault? Fault()
    {
        var what = !_cursor.IsEnded ? "has no end"
            : JournalLine.Fault(_cursor.Chained, _cursor.Line) is { } wrong ? wrong
            : JournalLine.Number(_cursor.Line) != _number + 1 ? FormattableString.Invariant($"is not numbered {_number + 1}")
            : null;
        return what is null ? null : new(_number + 1, _cursor.Offset, what);
    }

    private void Take()
    {
        _number++;
        var json = JournalLine.Json(_cursor.Line);
        if (json.StartsWith("{\"kind\":\"batch\""u8) && RecordJson.Read(json, _number) is LogRecord.BatchBegun batch)
        {
            _batchEnd = _number + batch.Lines + 1;
        }
        else if (IsEnd())
        {
            _batchEnd = null;
        }

        if (_batchEnd is null)
        {
            var sum = Encoding.ASCII.GetString(_cursor.Line[^JournalLine.SumLength..]);
            _good = _good with { Lines = _number, Length = _cursor.NextOffset, LastSum = sum };
        }

        if ((_number & 0xffff) == 0)
        {
            _progress?.Report(new("checking the journal", _cursor.NextOffset, _fileLength));
        }
    }

    /// <summary>
    /// Whether the bad line at hand is the end of a write that never finished, and not damage to something that was acknowledged. A line
    /// is acknowledged after a flush, and a batch's last line is written after its others were flushed; so nothing whole follows a tear,
    /// other than lines of the batch that was being written.
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
            if (_cursor.IsEnded && ProvesDamage())
            {
                return false;
            }
        }

        return torn;
    }

    /// <summary>Whether the line at hand, behind a bad one, was written when that one was on the disk already.</summary>
    private bool ProvesDamage()
    {
        var (number, holds) = (JournalLine.Number(_cursor.Line), JournalLine.Fault(_cursor.Chained, _cursor.Line) is null);
        return _batchEnd is not { } end ? holds : (number == end && IsEnd()) || (holds && number >= end);
    }

    private bool IsEnd() => JournalLine.Json(_cursor.Line).StartsWith("{\"kind\":\"end\""u8);

    /// <summary>
    /// Whether the line looks like a write that was cut short: without its end, or with blocks that were never filled. One changed bit
    /// makes neither: no byte at a line's beginning or end is one bit away from zero, and it makes no two zeros side by side.
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

/// <summary>Something in the journal that is not as it was written.</summary>
/// <param name="Line">The line, from 1.</param>
/// <param name="Offset">Where the line begins, in bytes.</param>
/// <param name="What">What is wrong with it.</param>
internal sealed record JournalFault(long Line, long Offset, string What)
{
    /// <summary>All of it in words.</summary>
    public string Text => FormattableString.Invariant($"line {Line} (byte {Offset}) {What}");
}

/// <summary>How far a long job has come.</summary>
/// <param name="Doing">What is being done, such as "checking the journal".</param>
/// <param name="Done">How much of it.</param>
/// <param name="Total">Out of how much; 0 where nobody knows.</param>
internal readonly record struct LogProgress(string Doing, long Done, long Total);
