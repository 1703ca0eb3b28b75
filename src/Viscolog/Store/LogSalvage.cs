using Viscolog.Output;
using Viscolog.Store.Copy;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>
/// Writes what is sound in a damaged journal, before the damage and after it, into a new log. The damaged one stays as it is.
/// </summary>
internal static class LogSalvage
{
    /// <summary>Records that are written at once.</summary>
    private const int BatchLength = 10_000;

    /// <summary>Makes the new log.</summary>
    /// <param name="from">The damaged one.</param>
    /// <param name="to">The new one, whose folder is not there yet or holds no log.</param>
    /// <param name="now">The time.</param>
    /// <param name="progress">Receives reports from time to time; may be null.</param>
    public static Outcome<LogSalvaged> Write(LogPlace from, LogPlace to, DateTimeOffset now, IProgress<LogProgress>? progress)
    {
        try
        {
            if (Obstacle(from, to) is { } obstacle)
            {
                return new Refused(obstacle);
            }

            using var taken = LogLock.Take(from, isShared: true, LogPatience.Short);
            return taken is null ? new Refused(LogLock.BusyWords(from)) : Written(from, to, now, progress);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or LogRefused or InvalidDataException)
        {
            return new Refused(OneLine.Of($"nothing was salvaged from {from.Journal}: {e.Message}"));
        }
    }

    private static string? Obstacle(LogPlace from, LogPlace to)
    {
        if (!File.Exists(from.Journal))
        {
            return $"there is no journal in {from.Folder}";
        }

        if (Path.GetDirectoryName(to.Folder) is { } parent && !Directory.Exists(parent))
        {
            return $"there is no folder {parent} to make the new log in; make it first or name another";
        }

        return File.Exists(to.Folder) || Path.Exists(to.Journal) || Path.Exists(to.Copy)
            ? $"{to.Folder} already exists; name a new folder for what is salvaged"
            : null;
    }

    private static LogSalvaged Written(LogPlace from, LogPlace to, DateTimeOffset now, IProgress<LogProgress>? progress)
    {
        using var journal = new FileStream(from.Journal, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
        var sound = SoundLines.Of(journal, progress);
        var acknowledged = Math.Max(Seal.Read(from.Seal)?.JournalLength ?? 0, JournalMark.Read(from.Mark, sound.FileLength));
        var at = JournalFile.Stamp(now);
        var salvage = new SalvagedRecords(sound, journal, acknowledged, at);
        to.Disk.KeepFolder(to.Folder);
        var path = to.Journal + ".new";
        to.Disk.Delete(path);
        JournalFile.Begin(to.Disk, path, Guid.CreateVersion7(now), at);
        Disk.Restrict(path, like: from.Journal);
        JournalScan scan;
        using (var writer = new JournalWriter(to.Disk, path, JournalFile.Scan(path, 0, null)))
        {
            foreach (var records in salvage.All().Chunk(BatchLength))
            {
                writer.Append(records, records.Length, at, CancellationToken.None);
                progress?.Report(new("writing what is sound", salvage.Read, sound.Count));
            }

            scan = writer.Now;
        }

        to.Disk.Move(path, to.Journal, overwrite: false);
        to.Disk.FlushFolder(to.Folder);
        var left = CopyBuilder.Build(to, scan, progress);
        return new(scan.Lines, salvage.Rows, [.. salvage.Losses().Select(l => $"{from.Journal}: {l}"), .. left]);
    }
}

/// <summary>What was salvaged.</summary>
/// <param name="Lines">Lines of the new journal.</param>
/// <param name="Entries">Rows of runs in it that were sound.</param>
/// <param name="Losses">What is not in it, and what of it counts no more, a line each.</param>
internal sealed record LogSalvaged(long Lines, long Entries, IReadOnlyList<string> Losses);
