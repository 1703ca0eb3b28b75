using System.Text;
using Viscolog.Output;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>
/// The journal of another bench as far as it was fetched, in a folder of its own, so that it is a log like any. It can be fetched again,
/// so what is not sound is thrown away.
/// </summary>
internal sealed class Mirror : IDisposable
{
    private readonly BenchStream _stream;
    private readonly FileStream _journal;
    private string _lastSum;

    private Mirror(BenchStream stream, FileStream journal, JournalScan scan)
        => (_stream, _journal, _lastSum, Lines) = (stream, journal, scan.LastSum, scan.Lines);

    /// <summary>How many lines it holds.</summary>
    public long Lines { get; private set; }

    /// <summary>The checksum of its last line, which stands for all before it; empty where there is none.</summary>
    public string LastSum => _lastSum;

    /// <summary>Opens the mirror of a stream to add to it; what was not written whole is cut off.</summary>
    /// <exception cref="IOException">It can't be written.</exception>
    public static Mirror Open(BenchStream stream, LogPlace place)
    {
        place.Disk.MakeFolder(place.Folder);
        var scan = Scanned(place);
        var journal = new FileStream(place.Journal, FileMode.OpenOrCreate, FileAccess.Write, FileShare.None, 1 << 16);
        place.Disk.Cut(journal, scan.Length);
        return new(stream, journal, scan);
    }

    /// <summary>Adds the next line; null, or why it is none.</summary>
    public string? Add(long number, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        if (bytes.Length > JournalWriter.LongestLine || text.Contains('\n', StringComparison.Ordinal))
        {
            return "it is no line of a journal";
        }

        if (number != Lines + 1 || JournalLine.Number(bytes) != number)
        {
            return FormattableString.Invariant($"line {Lines + 1} is missing");
        }

        var isSound = _lastSum.Length == 0 ? JournalLine.Fault(bytes, bytes) is null : JournalLine.Follows(_lastSum, bytes);
        if (!isSound)
        {
            return "its checksum does not hold";
        }

        try
        {
            var record = RecordJson.Read(JournalLine.Json(bytes), number);
            if (number == 1 && !(record is LogRecord.Begun { Version: JournalFile.Version, Log: var log } && log == _stream.Log))
            {
                return "it does not begin the journal of that log in a version that this program knows";
            }
        }
        catch (InvalidDataException e)
        {
            return e.Message;
        }

        _journal.Write(bytes);
        _journal.WriteByte((byte)'\n');
        (Lines, _lastSum) = (number, text[^JournalLine.SumLength..]);
        return null;
    }

    public void Dispose() => _journal.Dispose();

    private static JournalScan Scanned(LogPlace place)
    {
        try
        {
            if (new FileInfo(place.Journal) is { Exists: true, Length: > 0 })
            {
                return JournalFile.Scan(place.Journal, 0, null);
            }
        }
        catch (Exception e) when (e is LogRefused or InvalidDataException)
        {
            Disk.Real.Delete(place.Journal);
        }

        return new(0, 0, "", 0, null);
    }
}
