using System.Globalization;
using Viscolog.Output;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>Opens a log: lock, journal, query copy. Mends what can be mended without losing anything that was acknowledged.</summary>
internal sealed class LogOpening(LogPlace place, LogUse use, TimeProvider clock, IProgress<LogProgress>? progress)
{
    /// <summary>The version of the journal's format.</summary>
    public const int JournalVersion = 1;

    /// <summary>How long somebody who has the log is waited for.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    private readonly List<string> _notes = [];

    /// <summary>Opens it.</summary>
    public LogOutcome Open()
    {
        LogLock? taken = null;
        try
        {
            if (AbsentReason() is { } absent)
            {
                if (use == LogUse.Read)
                {
                    return new LogOutcome.Absent(absent);
                }

                MakeFolder();
            }

            taken = TakeLock(isShared: use == LogUse.Read);
            if (taken is null && (File.Exists(place.Lock) || IsWritable()))
            {
                return new LogOutcome.Busy($"the log in {place.Folder} is busy: {LogLock.HolderOf(place)} has it; close that first, or name another log with --log");
            }

            var opened = new LogOutcome.Opened(OpenLocked(ref taken));
            taken = null;
            return opened;
        }
        catch (LogRefused e)
        {
            return new LogOutcome.Refused(e.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            return new LogOutcome.Refused(OneLine.Of($"the log in {place.Folder} can't be reached: {e.Message}"));
        }
        finally
        {
            taken?.Dispose();
        }
    }

    /// <summary>Looks at every byte of the journal; refuses what is not a journal of this version.</summary>
    /// <exception cref="LogRefused">It is none.</exception>
    public static JournalScan Scan(string path, long sealedLength, IProgress<LogProgress>? progress)
    {
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
        CheckFirstLine(stream, path);
        stream.Position = 0;
        var scan = JournalScanner.Scan(stream, sealedLength, progress);
        return scan.Fault is { } fault
            ? throw new LogRefused($"{path} is damaged: {fault.Text}; nothing was changed. 'viscolog restore --from-copy' writes it again from the query copy where that is whole, 'viscolog restore BACKUP' puts a backup in its place; both keep the present files aside")
            : scan;
    }

    private BenchLog OpenLocked(ref LogLock? taken)
    {
        if (!Path.Exists(place.Journal))
        {
            Begin();
        }
        else if (Directory.Exists(place.Journal))
        {
            throw new LogRefused($"{place.Journal} is a folder, not a journal; move it away or name another log with --log");
        }

        var seal = Seal.Read(place.Seal);
        var scan = Scan(place.Journal, seal?.JournalLength ?? 0, progress);
        if (scan.IsTorn)
        {
            // Who only reads leaves it where it is, unread.
            scan = use == LogUse.Write ? CutTornEnd(scan) : scan with { FileLength = scan.Length };
        }

        var state = CopyFile.StateOf(place.Copy);
        RefuseForeign(state);
        if (state == CopyState.Ours && IsSealed(seal, scan))
        {
            return new BenchLog(place, scan, use, taken, clock, null) { Notes = _notes };
        }

        if (taken is { IsShared: true })
        {
            // The query copy has to be made anew, which only one may do; another may have done so meanwhile.
            taken.Dispose();
            taken = LogLock.Take(place, isShared: false, Patience);
            return taken is null
                ? new BenchLog(place, scan, use, null, clock, CopyInMemory(scan, "the query copy has to be made anew, but somebody else is reading the log")) { Notes = _notes }
                : OpenLocked(ref taken);
        }

        var copy = Rebuild(scan, WhyRebuilt(state, seal));
        return new BenchLog(place, scan, use, taken, clock, copy) { Notes = _notes };
    }

    private string? AbsentReason()
    {
        if (File.Exists(place.Folder))
        {
            throw new LogRefused($"{place.Folder} is a file, not a log's folder; name the folder with --log");
        }

        return !Directory.Exists(place.Folder) || !Path.Exists(place.Journal)
            ? $"there is no log in {place.Folder}; 'viscolog import FILE' starts one, --log names another folder"
            : null;
    }

    private void MakeFolder()
    {
        var parent = Path.GetDirectoryName(place.Folder);
        if (!place.IsUsual && parent is not null && !Directory.Exists(parent))
        {
            throw new LogRefused($"there is no folder {parent} to make the log in; make it first or name another with --log");
        }

        Directory.CreateDirectory(place.Folder);
        if (Path.Exists(place.Copy))
        {
            throw new LogRefused($"{place.Journal} is missing, but {place.Copy} is there; put a backup back with 'viscolog restore', or move that file away to start anew");
        }
    }

    private LogLock? TakeLock(bool isShared)
    {
        if (Directory.Exists(place.Lock))
        {
            throw new LogRefused($"{place.Lock} is a folder; move it away");
        }

        return use == LogUse.Read && !File.Exists(place.Lock) && !IsWritable() ? null : LogLock.Take(place, isShared, Patience);
    }

    private bool IsWritable()
    {
        try
        {
            using var probe = new FileStream(Path.Combine(place.Folder, $".{Guid.NewGuid():N}"), FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private void Begin()
    {
        var begun = new LogRecord.Begun(JournalVersion, Guid.CreateVersion7(clock.GetUtcNow())) { At = Stamp(clock) };
        // The lock keeps others away, so the name need not be claimed by an empty file, which a kill could leave behind.
        WholeFile.Write(place.Journal, JournalWriter.FirstLine(begun), replace: true);
    }

    /// <summary>The time as records carry it.</summary>
    public static string Stamp(TimeProvider clock) => clock.GetUtcNow().ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    private static void CheckFirstLine(FileStream stream, string path)
    {
        var cursor = new JournalCursor(stream);
        var ours = cursor.MoveNext() && cursor.Line.StartsWith("1 {\"kind\":\"log\""u8);
        if (!ours || !cursor.IsEnded || JournalLine.Fault(cursor.Chained, cursor.Line) is not null)
        {
            var what = stream.Length == 0 ? "is empty" : ours ? "is damaged in its first line" : "is not the journal of a log";
            throw new LogRefused($"{path} {what}; nothing was changed. Move it away, put a backup in its place with 'viscolog restore', or name another log with --log");
        }

        try
        {
            if (LogText.Read(JournalLine.Json(cursor.Line), 1) is LogRecord.Begun { Version: JournalVersion })
            {
                return;
            }
        }
        catch (InvalidDataException)
        {
            // A newer version may say more in its first line.
        }

        throw new LogRefused($"{path} was written by a newer version of this program; nothing was changed. Use that version, or name another log with --log");
    }

    private JournalScan CutTornEnd(JournalScan scan)
    {
        using var stream = new FileStream(place.Journal, FileMode.Open, FileAccess.ReadWrite, FileShare.Read);
        stream.Position = scan.Length;
        using (var torn = new FileStream(place.Torn, FileMode.Create, FileAccess.Write, FileShare.Read))
        {
            stream.CopyTo(torn);
            torn.Flush(flushToDisk: true);
        }

        stream.SetLength(scan.Length);
        stream.Flush(flushToDisk: true);
        _notes.Add(FormattableString.Invariant($"the last thing that was being logged had not been acknowledged and is not in the log; its {scan.FileLength - scan.Length} bytes are kept in {place.Torn}"));
        return scan with { FileLength = scan.Length };
    }

    private void RefuseForeign(CopyState state)
    {
        var what = state switch
        {
            CopyState.Foreign => "is not a query copy of a log",
            CopyState.Newer => "was written by a newer version of this program",
            _ => null,
        };
        if (what is not null)
        {
            throw new LogRefused($"{place.Copy} {what}; nothing was changed. Move it away: the log makes a new one from its journal");
        }
    }

    private bool IsSealed(Seal? seal, JournalScan scan)
        => seal is not null && seal.JournalLength == scan.Length && seal.JournalSum == scan.LastSum && !Path.Exists(place.CopyLog) && seal == Seal.Of(scan, place.Copy);

    private static string? WhyRebuilt(CopyState state, Seal? seal) => (state, seal) switch
    {
        (CopyState.Missing, _) => null,
        (CopyState.Older, _) => "the query copy was of an older version and was made anew from the journal",
        (CopyState.Damaged, _) => "the query copy was damaged and was made anew from the journal; nothing is lost",
        (_, null) => "the log had not been closed; its query copy was made anew from the journal, nothing is lost",
        _ => "the query copy was not as it was left and was made anew from the journal; nothing is lost",
    };

    /// <summary>Makes the query copy anew; one in memory where the folder has no room for it or can't be written, and somebody only reads.</summary>
    private QueryCopy? Rebuild(JournalScan scan, string? note)
    {
        try
        {
            CopyBuilder.Build(place, scan, progress);
            _notes.AddRange(note is null ? [] : [note]);
            return null;
        }
        catch (InvalidDataException e)
        {
            throw new LogRefused($"{place.Journal} can't be understood: {e.Message}; nothing was changed. Put a backup in its place with 'viscolog restore'", e);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // LiteDB throws exceptions of many types where a disk is full.
            var reason = OneLine.Of($"the query copy could not be made anew in {place.Folder} ({e.Message})");
            if (use == LogUse.Write)
            {
                throw new LogRefused($"{reason}; make room there or give leave to write, nothing is lost", e);
            }

            return CopyInMemory(scan, reason);
        }
    }

    private QueryCopy CopyInMemory(JournalScan scan, string reason)
    {
        _notes.Add($"{reason}; going on without it, nothing is lost");
        return CopyBuilder.BuildInMemory(place, scan, progress);
    }
}
