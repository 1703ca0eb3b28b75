using System.Buffers;
using System.Text;
using System.Text.Json;
using Viscolog.Output;

namespace Viscolog.Store.Journal;

/// <summary>Adds lines to a journal. What it returned from is on the disk; what it threw from is not in the journal.</summary>
internal sealed class JournalWriter : IDisposable
{
    /// <summary>The longest line, in bytes: what the query copy can't take the journal must not have.</summary>
    public const int LongestLine = 1 << 20;

    private const int BlockLength = 1 << 20;
    private const string Touched = "it was changed by another program meanwhile; close the log and open it again";

    private readonly Disk _disk;
    private readonly FileStream _stream;
    private readonly ArrayBufferWriter<byte> _pending = new();
    private readonly Utf8JsonWriter _json;
    private long _lines;
    private string _lastSum;
    private long _length;

    /// <summary>Goes on after the last line of a scan; what stands behind it must have been cut off before.</summary>
    public JournalWriter(Disk disk, string path, JournalScan scan)
        : this(disk, new FileStream(path, FileMode.Open, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0), scan)
    {
    }

    /// <summary>The same with a journal that is open, and is closed with the writer.</summary>
    public JournalWriter(Disk disk, FileStream journal, JournalScan scan)
    {
        _disk = disk;
        _stream = journal;
        _json = RecordJson.Writer(_pending);
        (_lines, _lastSum, _length) = (scan.Lines, scan.LastSum, scan.Length);
        _stream.Position = _length;
    }

    /// <summary>Whether a fault left the journal's end unknown; nothing more can be added then.</summary>
    public bool IsBroken { get; private set; }

    /// <summary>The lines, bytes and last checksum as they stand.</summary>
    public JournalScan Now => new(_lines, _length, _lastSum, _length, null);

    /// <summary>The text of a journal with one line.</summary>
    public static byte[] FirstLine(LogRecord.Begun begun)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using var json = RecordJson.Writer(buffer);
        JournalLine.Write(buffer, json, begun, 1, "");
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Adds records that count together or not at all, and returns when they are on the disk.</summary>
    /// <exception cref="IOException">They could not be written; the journal is as it was, or <see cref="IsBroken"/>.</exception>
    /// <exception cref="InvalidDataException">A record is too long; the journal is as it was.</exception>
    /// <exception cref="OperationCanceledException">It was stopped; the journal is as it was.</exception>
    public void Append(IEnumerable<LogRecord> records, int count, string at, CancellationToken stop)
    {
        if (IsBroken)
        {
            throw new IOException("the journal could not be repaired after a fault; close the log and open it again");
        }

        if (!IsUntouched())
        {
            IsBroken = true;
            throw new IOException(Touched);
        }

        var before = (_lines, _lastSum, _length);
        try
        {
            if (count == 1)
            {
                Add(records.Single() with { At = at });
            }
            else
            {
                AppendBatch(records, count, at, stop);
            }

            Flush();
        }
        catch (Exception)
        {
            CutBack(before);
            throw;
        }

        if (!IsUntouched())
        {
            // Somebody put another file in its place meanwhile: what was written may stand nowhere.
            IsBroken = true;
            throw new IOException(Touched);
        }
    }

    /// <summary>Adds lines that stood in this journal before, and returns when they are on the disk.</summary>
    /// <exception cref="InvalidDataException">They do not follow its last line; the journal is as it was.</exception>
    /// <exception cref="IOException">They could not be written; the journal is as it was, or <see cref="IsBroken"/>.</exception>
    public void AppendLost(IEnumerable<string> lines)
    {
        var before = (_lines, _lastSum, _length);
        try
        {
            foreach (var line in lines)
            {
                var bytes = Encoding.UTF8.GetBytes(line);
                if (JournalLine.Number(bytes) != _lines + 1 || !JournalLine.Follows(_lastSum, bytes))
                {
                    throw new InvalidDataException(FormattableString.Invariant($"line {_lines + 1} does not follow the one before it"));
                }

                _pending.Write(bytes);
                _pending.Write("\n"u8);
                (_lines, _lastSum) = (_lines + 1, line[^JournalLine.SumLength..]);
            }

            Flush();
        }
        catch (Exception)
        {
            CutBack(before);
            throw;
        }
    }

    /// <summary>Whether the journal is what this writer left: its length, and its last checksum.</summary>
    public bool IsUntouched()
    {
        Span<byte> wanted = stackalloc byte[JournalLine.LinkLength];
        Span<byte> found = stackalloc byte[JournalLine.LinkLength];
        Encoding.ASCII.GetBytes(_lastSum + "\n", wanted);
        try
        {
            // By its name, since another file may have taken it.
            using var named = File.OpenHandle(_stream.Name, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            return RandomAccess.GetLength(named) == _length && _stream.Length == _length
                && RandomAccess.Read(named, found, _length - found.Length) == found.Length && found.SequenceEqual(wanted);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _json.Dispose();
        _stream.Dispose();
    }

    private void AppendBatch(IEnumerable<LogRecord> records, int count, string at, CancellationToken stop)
    {
        // A batch's beginning is on the disk before its lines, and they before its end: whatever a power cut leaves can be told.
        Add(new LogRecord.BatchBegun(count) { At = at });
        Flush();
        var added = 0;
        foreach (var record in records)
        {
            stop.ThrowIfCancellationRequested();
            Add(record);
            added++;
        }

        if (added != count)
        {
            throw new InvalidOperationException("a batch of another length than was said");
        }

        Flush();
        Add(new LogRecord.BatchEnded());
    }

    private void Add(LogRecord record)
    {
        var before = _pending.WrittenCount;
        _lastSum = JournalLine.Write(_pending, _json, record, ++_lines, _lastSum);
        if (_pending.WrittenCount - before > LongestLine)
        {
            throw new InvalidDataException(
                FormattableString.Invariant($"a header or row takes {_pending.WrittenCount - before} bytes; the most is {LongestLine}"));
        }

        if (_pending.WrittenCount >= BlockLength)
        {
            Write();
            FlatMemory.Keep();
        }
    }

    private void Flush()
    {
        Write();
        _disk.Flush(_stream);
    }

    private void Write()
    {
        _disk.Write(_stream, _pending.WrittenSpan);
        _length += _pending.WrittenCount;
        _pending.ResetWrittenCount();
    }

    private void CutBack((long Lines, string LastSum, long Length) before)
    {
        (_lines, _lastSum, _length) = before;
        _pending.ResetWrittenCount();
        IsBroken = true;
        try
        {
            _disk.Cut(_stream, _length);
            _disk.Flush(_stream);
            IsBroken = false;
        }
        catch (IOException)
        {
            // The next start finds the torn end and cuts it off.
        }
    }
}
