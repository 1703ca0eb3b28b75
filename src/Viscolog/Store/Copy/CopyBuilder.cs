using System.Text;
using Viscolog.Output;
using Viscolog.Store.Journal;

namespace Viscolog.Store.Copy;

/// <summary>Makes a query copy from a journal: beside the old one first, and in its place once it is whole.</summary>
internal static class CopyBuilder
{
    /// <summary>Makes the query copy anew.</summary>
    /// <exception cref="InvalidDataException">The journal's records do not fit together.</exception>
    public static void Build(LogPlace place, JournalScan scan, IProgress<LogProgress>? progress)
    {
        BuildBeside(place, scan, progress);
        PutInPlace(place, scan);
    }

    /// <summary>Makes a new query copy beside the one in use.</summary>
    public static void BuildBeside(LogPlace place, JournalScan scan, IProgress<LogProgress>? progress)
    {
        DeleteBeside(place);
        using var copy = CopyFile.Create(place.NewCopy);
        Fill(copy, place, scan, progress);
    }

    /// <summary>Makes a query copy that ends with the program.</summary>
    public static QueryCopy BuildInMemory(LogPlace place, JournalScan scan, IProgress<LogProgress>? progress)
    {
        var copy = CopyFile.CreateInMemory();
        Fill(copy, place, scan, progress);
        return copy;
    }

    private static void Fill(QueryCopy copy, LogPlace place, JournalScan scan, IProgress<LogProgress>? progress)
    {
        using var journal = new FileStream(place.Journal, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
        var (line, rows, runs) = (0L, 0L, 0);
        foreach (var record in JournalScanner.Records(journal, scan.Length))
        {
            copy.Apply(record);
            rows += record is LogRecord.RowAdded ? 1 : 0;
            runs = record is LogRecord.RunStated stated ? Math.Max(runs, stated.Run) : runs;
            if ((++line & 0xfff) == 0)
            {
                progress?.Report(new("making the query copy", line, scan.Lines));
            }
        }

        copy.Flush();
        var counted = copy.Counted();
        if (counted != (runs, rows))
        {
            throw new IOException(FormattableString.Invariant(
                $"the new query copy holds {counted.Rows} of {rows} rows and {counted.Runs} of {runs} runs"));
        }
    }

    /// <summary>Puts the new query copy in the place of the old one and seals it.</summary>
    public static void PutInPlace(LogPlace place, JournalScan scan)
    {
        // Without its seal the old pair is not trusted, so a kill at any moment leaves nothing wrong behind.
        place.Disk.Delete(place.Seal);
        place.Disk.Delete(place.CopyLog);
        place.Disk.Move(place.NewCopy, place.Copy, overwrite: true);
        place.Disk.FlushFolder(place.Folder);
        SealUp(place, scan);
    }

    /// <summary>Writes the seal of the journal and query copy as they are now.</summary>
    public static void SealUp(LogPlace place, JournalScan scan)
        => WholeFile.Write(place.Disk, place.Seal, Encoding.UTF8.GetBytes(Seal.Of(scan, place.Copy).Text()), replace: true);

    /// <summary>Deletes a query copy that stands beside the one in use.</summary>
    public static void DeleteBeside(LogPlace place)
    {
        place.Disk.Delete(place.NewCopy);
        place.Disk.Delete(place.NewCopyLog);
    }
}
