using Viscolog.Output;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>Opens a log: lock, journal, query copy. Repairs what can be repaired without losing anything that was acknowledged.</summary>
internal sealed class LogOpening(LogPlace place, LogUse use, TimeProvider clock, IProgress<LogProgress>? progress, LogPatience patience)
{
    /// <summary>Bytes of the longest journal that is read into memory beside a program that writes it.</summary>
    private const long LongestBeside = 64 << 20;

    private readonly List<string> _notes = [];

    /// <summary>Opens it; the log is to be disposed of. Where it is refused, nothing was changed.</summary>
    public Outcome<BenchLog> Open()
    {
        LogHold? hold = null;
        try
        {
            var isAbsent = place.IsAbsent;
            if (File.Exists(place.Folder))
            {
                return new Refused($"{place.Folder} is a file, not a log's folder; name the folder with --log");
            }

            if (place.Odd is { } odd)
            {
                return new Refused($"{odd} is a pipe, a device or a socket, not a file of a log; nothing was changed. Move it away, "
                    + "or name another log with --log");
            }

            if (isAbsent)
            {
                MakeFolder();
            }

            var holder = LogLock.HolderOf(place);
            var taken = TakeLock(out var isBusy);
            if (isBusy)
            {
                return Beside(holder) is { } beside
                    ? beside
                    : new Refused($"{LogLock.BusyWords(place)}, or name another log with --log");
            }

            hold = new(taken, null);
            var opened = OpenLocked(ref hold, holder);
            hold = null;
            return opened;
        }
        catch (LogRefused e)
        {
            return new Refused(e.Message);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            return new Refused(OneLine.Of($"the log in {place.Folder} can't be reached: {e.Message}"));
        }
        finally
        {
            hold?.Dispose();
        }
    }

    private BenchLog OpenLocked(ref LogHold hold, string holder)
    {
        if (!LogPlace.IsThere(place.Journal))
        {
            // The lock keeps others away, so no empty file has to claim the name first, which a kill could leave behind.
            var now = clock.GetUtcNow();
            JournalFile.Begin(place.Disk, place.Journal, JournalFile.NewId(now), JournalFile.Stamp(now));
        }
        else if (Directory.Exists(place.Journal))
        {
            throw new LogRefused($"{place.Journal} is a folder, not a journal; move it away or name another log with --log");
        }

        if (hold.Claim is null)
        {
            hold = hold with
            {
                Claim = JournalClaim.Take(place.Disk, place.Journal, isShared: use == LogUse.Read, LogPatience.Short.Time)
                    ?? throw new LogRefused($"{LogLock.BusyWords(place, holder)}, or name another log with --log"),
            };
        }

        var seal = Seal.Read(place.Seal);
        var vouched = Math.Max(seal?.JournalLength ?? 0, JournalMark.Read(place.Mark, new FileInfo(place.Journal).Length));
        var scan = JournalFile.Scan(place.Journal, vouched, progress);
        if (scan.IsTorn)
        {
            // A reader leaves the torn end in place and ignores it.
            scan = use == LogUse.Write ? CutTornEnd(scan, hold.Claim.File) : scan with { FileLength = scan.Length };
        }

        var state = CopyFile.StateOf(place.Copy);
        RefuseForeign(state);
        if (state == CopyState.Ours && IsSealed(seal, scan))
        {
            return Log(scan, hold, null);
        }

        if (hold.Lock is { IsShared: true } shared)
        {
            // The query copy has to be made anew, which only one may do; another may have done so meanwhile. The journal's own lock keeps
            // others away where they lock another file, since this one was removed.
            shared.Dispose();
            hold.Claim.Dispose();
            hold = new(LogLock.Take(place, isShared: false, LogPatience.Short), null);
            var why = "somebody else is reading the log";
            hold = hold with { Claim = hold.Lock is null ? null : ClaimAlone(ref why) };
            return hold.Claim is not null
                ? OpenLocked(ref hold, holder)
                : Log(scan, hold, CopyInMemory(scan, $"the query copy has to be rebuilt, but {why}; going on without it, nothing is lost"));
        }

        return Log(scan, hold, Rebuild(scan, WhyRebuilt(state, seal)));
    }

    /// <summary>The journal for nobody else; null where another program has it, or where it may not be written.</summary>
    private JournalClaim? ClaimAlone(ref string why)
    {
        try
        {
            return JournalClaim.Take(place.Disk, place.Journal, isShared: false, LogPatience.Short.Time);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Such as in a folder that is read only.
            why = OneLine.Of($"the journal can't be written ({e.Message})");
            return null;
        }
    }

    private BenchLog Log(JournalScan scan, LogHold hold, QueryCopy? copy) => new(place, scan, use, hold, clock, copy) { Notes = _notes };

    private void MakeFolder()
    {
        if (use == LogUse.Read)
        {
            throw new LogRefused($"there is no log in {place.Folder}; 'viscolog import FILE' starts one, --log names another folder");
        }

        var parent = Path.GetDirectoryName(place.Folder);
        if (!place.IsUsual && parent is not null && !Directory.Exists(parent))
        {
            throw new LogRefused($"there is no folder {parent} to make the log in; make it first or name another with --log");
        }

        place.Disk.KeepFolder(place.Folder);
        if (Path.Exists(place.Copy))
        {
            throw new LogRefused($"{place.Journal} is missing, but {place.Copy} is there; put a backup back with 'viscolog restore', "
                + "or move that file away to start afresh");
        }
    }

    /// <summary>
    /// The log as it was last saved, for a reader beside a program that adds to it: from the journal alone, into memory. Null where it is
    /// too long for that, or where there is no journal yet.
    /// </summary>
    private BenchLog? Beside(string holder)
    {
        if (use != LogUse.Read || !File.Exists(place.Journal) || new FileInfo(place.Journal).Length > LongestBeside)
        {
            return null;
        }

        // What is being written now is not in it, and looks like the torn end of a last write.
        var vouched = JournalMark.Read(place.Mark, new FileInfo(place.Journal).Length);
        var scan = JournalFile.Scan(place.Journal, vouched, progress);
        scan = scan with { FileLength = scan.Length };
        var who = holder.Length > 0 ? holder : "another program";
        return Log(scan, new(null, null), CopyInMemory(scan, $"{who} is adding to the log; this is what it had saved so far"));
    }

    /// <summary>The lock; null for a reader of a folder that can't be written and has none, and where another program has it.</summary>
    private LogLock? TakeLock(out bool isBusy)
    {
        isBusy = false;
        if (Directory.Exists(place.Lock))
        {
            throw new LogRefused($"{place.Lock} is a folder; move it away");
        }

        if (use == LogUse.Read && !File.Exists(place.Lock) && !IsWritable())
        {
            return null;
        }

        // A reader has something to read beside the one who writes, so it need not wait long.
        var wait = use == LogUse.Read ? patience with { Time = TimeSpan.FromSeconds(0.5) } : patience;
        var taken = LogLock.Take(place, isShared: use == LogUse.Read, wait, patience == LogPatience.Short ? null : progress);
        isBusy = taken is null;
        return taken;
    }

    private bool IsWritable()
    {
        try
        {
            var name = Path.Combine(place.Folder, $".{Guid.NewGuid():N}");
            using var probe = new FileStream(name, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private JournalScan CutTornEnd(JournalScan scan, FileStream stream)
    {
        stream.Position = scan.Length;
        var kept = place.NextTorn();
        place.Disk.Copy(stream, kept);
        place.Disk.FlushFolder(place.Folder);
        place.Disk.Cut(stream, scan.Length);
        place.Disk.Flush(stream);
        _notes.Add("the last thing that was being logged had not been acknowledged and is not in the log; "
            + FormattableString.Invariant($"its {scan.FileLength - scan.Length} bytes are kept in {kept}"));
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
        => seal is not null && !Path.Exists(place.CopyLog) && seal == Seal.Of(scan, place.Copy);

    private static string? WhyRebuilt(CopyState state, Seal? seal) => (state, seal) switch
    {
        (CopyState.Missing, _) => null,
        (CopyState.Older, _) => "the query copy was of an older version and was rebuilt from the journal",
        (CopyState.Damaged, _) => "the query copy was damaged and was rebuilt from the journal; nothing is lost",
        (_, null) => "the log had not been closed; its query copy was rebuilt from the journal; nothing is lost",
        _ => "the query copy was not as it was left and was rebuilt from the journal; nothing is lost",
    };

    /// <summary>Makes the query copy anew: in memory, for a reader, where the folder has no room for it or can't be written.</summary>
    private QueryCopy? Rebuild(JournalScan scan, string? note)
    {
        try
        {
            var left = CopyBuilder.Build(place, scan, progress);
            _notes.AddRange([.. note is null ? Array.Empty<string>() : [note], .. left]);
            return null;
        }
        catch (InvalidDataException e)
        {
            var advice = "nothing was changed. Put a backup in its place with 'viscolog restore'";
            throw new LogRefused($"{place.Journal} can't be understood: {e.Message}; {advice}", e);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // LiteDB throws exceptions of many types where a disk is full.
            var reason = OneLine.Of($"the query copy could not be rebuilt in {place.Folder} ({e.Message})");
            if (use == LogUse.Write)
            {
                throw new LogRefused($"{reason}; free some space or allow writing there; nothing is lost", e);
            }

            return CopyInMemory(scan, $"{reason}; going on without it, nothing is lost");
        }
    }

    private QueryCopy CopyInMemory(JournalScan scan, string reason)
    {
        _notes.Add(reason);
        var (copy, left) = CopyBuilder.BuildInMemory(place, scan, progress);
        _notes.AddRange(left);
        return copy;
    }
}
