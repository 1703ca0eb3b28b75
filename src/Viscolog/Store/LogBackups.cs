using System.Globalization;
using Viscolog.Output;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>Copies of the journal, which hold all that the log holds: made, checked, restored.</summary>
internal static class LogBackups
{
    private const string Prefix = "backup-";
    private const string Ending = ".journal";

    /// <summary>Copies an open log's journal into a folder and keeps the latest copies there.</summary>
    /// <param name="log">The log; nobody can add to it meanwhile.</param>
    /// <param name="folder">Where to; made where its parent exists.</param>
    /// <param name="keep">Copies to keep, this one included; 1 or more.</param>
    /// <param name="now">The time, for the name.</param>
    /// <param name="progress">Receives reports from time to time; may be null.</param>
    public static Outcome<BackupMade> Make(BenchLog log, string folder, int keep, DateTimeOffset now, IProgress<LogProgress>? progress)
    {
        return Guarded<BackupMade>($"no backup was made in {folder}", () =>
        {
            var (disk, parent) = (log.Place.Disk, Path.GetDirectoryName(folder));
            if (!Directory.Exists(folder) && folder != log.Place.Backups && !Directory.Exists(parent))
            {
                return new Refused($"there is no folder {parent} to make backups in; make it first or name another with --to");
            }

            var temporary = Path.Combine(folder, $".{Guid.NewGuid():N}.tmp");
            try
            {
                disk.KeepFolder(folder);
                progress?.Report(new("copying the journal", 0, 0));
                var sound = log.Sound.Length;
                Copied(disk, log.Place.Journal, temporary, sound);
                var scan = JournalFile.Scan(temporary, sound, progress);
                // With a part of the log's identity in it the name is no other log's.
                var id = JournalFile.IdOf(temporary) ?? Guid.Empty;
                var path = Free(folder, $"{Prefix}{Stamp(now)}-{id.ToString("N")[^8..]}", Ending);
                disk.Move(temporary, path, overwrite: false);
                disk.FlushFolder(folder);
                return new BackupMade(path, scan.Lines, Prune(disk, path, id, keep));
            }
            finally
            {
                if (File.Exists(temporary))
                {
                    disk.Delete(temporary);
                }
            }
        });
    }

    /// <summary>Puts a backup in the place of a log, whose present files are set aside together first.</summary>
    public static Outcome<BackupRestored> Restore(LogPlace place, string backup, DateTimeOffset now, IProgress<LogProgress>? progress)
        => Guarded<BackupRestored>($"{backup} was not restored", () =>
        {
            if (!LogPlace.IsThere(backup))
            {
                return new Refused($"{backup}: no such file; name a backup, such as one in {place.Backups}");
            }

            if (!FileKind.IsRegular(backup) || place.Odd is not null)
            {
                return new Refused($"{place.Odd ?? backup} is a pipe, a device or a socket; a log is restored from a file into files");
            }

            var scan = JournalFile.Scan(backup, 0, progress);
            if (scan.IsTorn)
            {
                return new Refused($"{backup} is cut off in the middle; take another backup");
            }

            if (File.Exists(place.Folder) || !(Directory.Exists(place.Folder) || Directory.Exists(Path.GetDirectoryName(place.Folder))))
            {
                return new Refused($"{place.Folder} can't be a log's folder; name one with --log");
            }

            if (!Path.Exists(place.Journal))
            {
                place.Disk.KeepFolder(place.Folder);
            }

            using var hold = LogHold.Alone(place);

            // The copy comes in first under another name, so that a full disk is found while nothing has moved.
            place.Disk.Delete(Arriving(place));
            Copied(place.Disk, backup, Arriving(place));
            return PutBack(place, hold, scan, now, progress);
        });

    /// <summary>Writes a damaged journal again from the log's query copy, where that is what it was when the log was last closed.</summary>
    public static Outcome<BackupRestored> RestoreFromCopy(LogPlace place, DateTimeOffset now, IProgress<LogProgress>? progress)
        => Guarded<BackupRestored>("the journal was not rebuilt", () =>
        {
            if (Seal.Read(place.Seal) is not { } seal || CopyFile.StateOf(place.Copy) != CopyState.Ours)
            {
                return new Refused($"nothing vouches for {place.Copy}; restore a backup instead");
            }

            using var hold = LogHold.Alone(place);

            if (Seal.SumOf(place.Copy) != (seal.CopyLength, seal.CopySum))
            {
                return new Refused($"{place.Copy} is not as it was left; restore a backup instead");
            }

            WriteFromCopy(place, now, progress);
            return PutBack(place, hold, JournalFile.Scan(Arriving(place), 0, progress), now, progress);
        });

    private static Outcome<T> Guarded<T>(string fault, Func<Outcome<T>> work)
        where T : class
    {
        try
        {
            return work();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or LogRefused or InvalidDataException)
        {
            // A log that another program has says so by itself.
            return new Refused(
                OneLine.Of(
                    e is LogRefused && e.Message.StartsWith("the log in ", StringComparison.Ordinal)
                        ? e.Message
                        : $"{fault}: {e.Message}"));
        }
    }

    private static void WriteFromCopy(LogPlace place, DateTimeOffset now, IProgress<LogProgress>? progress)
    {
        using var copy = CopyFile.Open(place.Copy, readOnly: true);
        var path = Arriving(place);
        JournalFile.Begin(place.Disk, path, Guid.CreateVersion7(), JournalFile.Stamp(now), like: place.Journal);
        using var journal = new JournalWriter(place.Disk, path, JournalFile.Scan(path, 0, null));
        var (done, total) = (0, copy.BatchCount());
        foreach (var (records, at) in copy.Batches())
        {
            progress?.Report(new("writing the journal", ++done, total));
            journal.Append(records, records.Count, at, CancellationToken.None);
        }
    }

    private static string Arriving(LogPlace place) => place.Journal + ".new";

    private static BackupRestored PutBack(
        LogPlace place, LogHold hold, JournalScan scan, DateTimeOffset now, IProgress<LogProgress>? progress)
    {
        // The old journal is copied aside and then replaced in one move, so that there is a whole one at every moment.
        var aside = SetAside(place, now);
        Disk.Restrict(Arriving(place), place.Journal);
        if (OperatingSystem.IsWindows())
        {
            // There an open file can't be replaced; the lock beside it still keeps others away.
            hold.Claim?.Dispose();
        }

        try
        {
            place.Disk.Move(Arriving(place), place.Journal, overwrite: true);
        }
        catch (Exception e) when (aside is not null && e is IOException or UnauthorizedAccessException)
        {
            TakeBack(place, aside!);
            throw;
        }

        place.Disk.FlushFolder(place.Folder);
        return new(scan.Lines, aside) { Notes = CopyBuilder.Build(place, scan, progress) };
    }

    /// <summary>
    /// Brings back what was set aside for a journal that then could not come in its place: the query copy and its seal may be all that
    /// a damaged journal can be made from. What can't be brought back stays aside.
    /// </summary>
    private static void TakeBack(LogPlace place, string aside)
    {
        foreach (var path in Directory.GetFiles(aside))
        {
            try
            {
                var home = Path.Combine(place.Folder, Path.GetFileName(path));
                if (!Path.Exists(home))
                {
                    place.Disk.Move(path, home, overwrite: false);
                }
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                // The fault that brought this about is told; it says where the rest is.
            }
        }
    }

    private static string? SetAside(LogPlace place, DateTimeOffset now)
    {
        string[] present =
        [
            .. new[] { place.Journal, place.Seal, place.Mark, place.CopyLog, place.Copy }.Where(Path.Exists),
            .. place.AllTorn,
        ];
        if (present.Length == 0)
        {
            return null;
        }

        var folder = Free(place.Folder, "aside-" + Stamp(now), "");
        place.Disk.MakeFolder(folder);
        foreach (var path in present)
        {
            var target = Path.Combine(folder, Path.GetFileName(path));
            if (path == place.Journal && File.Exists(path))
            {
                Copied(place.Disk, path, target);
            }
            else
            {
                place.Disk.Move(path, target, overwrite: false);
            }
        }

        place.Disk.FlushFolder(folder);
        return folder;
    }

    private static void Copied(Disk disk, string from, string to, long most = long.MaxValue)
    {
        using var source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
        disk.Copy(source, to, most);
    }

    private static string Free(string folder, string name, string ending)
    {
        var path = Path.Combine(folder, name + ending);
        for (var i = 2; Path.Exists(path); i++)
        {
            path = Path.Combine(folder, FormattableString.Invariant($"{name}-{i}{ending}"));
        }

        return path;
    }

    /// <summary>
    /// Deletes the log's own backups beyond those to keep: the one just made stays, then those with the most lines. Times of files and
    /// clocks decide nothing. What is damaged, cut off or another log's is neither counted nor deleted.
    /// </summary>
    private static int Prune(Disk disk, string made, Guid id, int keep)
    {
        var others = Directory.GetFiles(Path.GetDirectoryName(made)!, Prefix + "*" + Ending).Where(p => p != made).ToList();
        if (others.Count < keep)
        {
            return 0;
        }

        var old = others.Select(p => (Path: p, Lines: LinesOfOwn(p, id))).Where(b => b.Lines > 0)
            .OrderByDescending(b => b.Lines).ThenByDescending(b => b.Path, StringComparer.Ordinal).Skip(keep - 1).ToList();
        old.ForEach(b => disk.Delete(b.Path));
        return old.Count;
    }

    /// <summary>The lines of a whole backup of that log; 0 where it is none.</summary>
    private static long LinesOfOwn(string backup, Guid id)
    {
        try
        {
            return JournalFile.IdOf(backup) == id && JournalFile.Scan(backup, 0, null) is { IsTorn: false, Lines: var lines } ? lines : 0;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or LogRefused)
        {
            return 0;
        }
    }

    private static string Stamp(DateTimeOffset now) => now.UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
}

/// <summary>A backup that was made and read through.</summary>
/// <param name="Path">Where it is.</param>
/// <param name="Lines">Journal lines that it holds.</param>
/// <param name="Deleted">Older backups that were deleted.</param>
internal sealed record BackupMade(string Path, long Lines, int Deleted);

/// <summary>A backup that was put in place.</summary>
/// <param name="Lines">Journal lines that it holds.</param>
/// <param name="Aside">The folder with the files that were there before; null where there were none.</param>
internal sealed record BackupRestored(long Lines, string? Aside)
{
    /// <summary>What of it can't be applied and is left out, a line each.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];
}
