using Viscolog.Output;

namespace Viscolog.Store.Journal;

/// <summary>A journal as a file: begun, and checked before anything in it is used.</summary>
internal static class JournalFile
{
    /// <summary>The version of the journal's format.</summary>
    public const int Version = 1;

    /// <summary>The time as records carry it.</summary>
    public static string Stamp(DateTimeOffset now) => FormattableString.Invariant($"{now.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss.fff'Z'}");

    /// <summary>Writes a journal with nothing but its first line; what is there is written over.</summary>
    /// <param name="disk">The disk that it is on.</param>
    /// <param name="path">The journal.</param>
    /// <param name="log">The log's UUID.</param>
    /// <param name="at">When it was begun.</param>
    /// <param name="like">A file whose readers may read this one too, and nobody else; null for who the system lets.</param>
    public static void Begin(Disk disk, string path, Guid log, string at, string? like = null)
        => WholeFile.Write(disk, path, JournalWriter.FirstLine(new(Version, log) { At = at }), replace: true, like);

    /// <summary>A UUID that tells when it was made, where the clock shows a time that it can tell.</summary>
    public static Guid NewId(DateTimeOffset now) => now < DateTimeOffset.UnixEpoch ? Guid.NewGuid() : Guid.CreateVersion7(now);

    /// <summary>Looks at every byte of the journal; refuses what is not a journal of this version.</summary>
    /// <param name="path">The journal.</param>
    /// <param name="sealedLength">Bytes that the seal or the mark vouches for; 0 without them.</param>
    /// <param name="progress">Receives reports from time to time; may be null.</param>
    /// <exception cref="LogRefused">It is none.</exception>
    public static JournalScan Scan(string path, long sealedLength, IProgress<LogProgress>? progress)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
        CheckFirstLine(stream, path);
        stream.Position = 0;
        var scan = JournalScanner.Scan(stream, sealedLength, progress);
        return scan.Fault is { } fault
            ? throw new LogRefused($"{path} is damaged: {fault.Text}; nothing was changed. 'viscolog restore --from-copy' rebuilds it "
                + "from the query copy if that is whole, 'viscolog restore BACKUP' puts a backup in its place; both keep the present "
                + "files aside. 'viscolog verify --salvage NEWLOG' copies what is sound before and after it into a new log")
            : scan;
    }

    /// <summary>The identity of the log whose journal or backup this is; null where it is none of this version.</summary>
    public static Guid? IdOf(string path)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
        var head = new byte[256];
        using var first = new MemoryStream(head, 0, stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false));
        var cursor = new JournalCursor(first);
        try
        {
            return cursor.MoveNext() && cursor.IsEnded && JournalLine.Fault(cursor.Chained, cursor.Line) is null
                && RecordJson.Read(JournalLine.Json(cursor.Line), 1) is LogRecord.Begun { Log: var id } ? id : null;
        }
        catch (InvalidDataException)
        {
            return null;
        }
    }

    private static void CheckFirstLine(FileStream stream, string path)
    {
        var cursor = new JournalCursor(stream);
        var ours = cursor.MoveNext() && cursor.Line.StartsWith("1 {\"kind\":\"log\""u8);
        if (!ours || !cursor.IsEnded || JournalLine.Fault(cursor.Chained, cursor.Line) is not null)
        {
            var what = stream.Length == 0 ? "is empty" : ours ? "is damaged in its first line" : "is not the journal of a log";
            throw new LogRefused($"{path} {what}; nothing was changed. Move it away, put a backup in its place with 'viscolog restore', "
                + "or name another log with --log");
        }

        if (!IsOfThisVersion(JournalLine.Json(cursor.Line)))
        {
            throw new LogRefused($"{path} was written by a newer version of this program; nothing was changed. Use that version, "
                + "or name another log with --log");
        }
    }

    private static bool IsOfThisVersion(ReadOnlySpan<byte> firstLine)
    {
        try
        {
            return RecordJson.Read(firstLine, 1) is LogRecord.Begun { Version: Version };
        }
        catch (InvalidDataException)
        {
            // A newer version may say more in its first line.
            return false;
        }
    }
}

/// <summary>Why a log can't be opened, on the way to the outcome that says so.</summary>
internal sealed class LogRefused : Exception
{
    public LogRefused(string message)
        : base(message)
    {
    }

    public LogRefused()
    {
    }

    public LogRefused(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
