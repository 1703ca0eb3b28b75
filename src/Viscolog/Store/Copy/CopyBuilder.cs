using System.Text;
using Viscolog.Output;
using Viscolog.Store.Journal;

namespace Viscolog.Store.Copy;

/// <summary>Makes a query copy from a journal: beside the old one first, and in its place once it is whole.</summary>
internal static class CopyBuilder
{
    /// <summary>Makes the query copy anew.</summary>
    /// <returns>What of the journal could not be applied and is left out, a line each.</returns>
    /// <exception cref="InvalidDataException">A record of the journal can't be understood.</exception>
    public static IReadOnlyList<string> Build(LogPlace place, JournalScan scan, IProgress<LogProgress>? progress)
    {
        var left = BuildBeside(place, scan, progress);
        PutInPlace(place, scan);
        return left;
    }

    /// <summary>Makes a new query copy beside the one in use.</summary>
    /// <inheritdoc cref="Build"/>
    public static IReadOnlyList<string> BuildBeside(LogPlace place, JournalScan scan, IProgress<LogProgress>? progress)
    {
        var filling = new CopyFilling(place, scan, progress);
        bool isWhole;
        do
        {
            DeleteBeside(place);
            // LiteDB opens what it makes to everybody, so both files are there before it comes: open to those who may read the journal.
            var mode = Disk.ModeOf(place.Journal);
            Disk.New(place.NewCopy, mode).Dispose();
            Disk.New(place.NewCopyLog, mode).Dispose();
            using var copy = CopyFile.Create(place.NewCopy);
            isWhole = filling.TryFill(copy);
        }
        while (!isWhole);
        return filling.LeftOut;
    }

    /// <summary>Makes a query copy that ends with the program.</summary>
    /// <inheritdoc cref="Build"/>
    public static (QueryCopy Copy, IReadOnlyList<string> LeftOut) BuildInMemory(
        LogPlace place,
        JournalScan scan,
        IProgress<LogProgress>? progress)
    {
        var filling = new CopyFilling(place, scan, progress);
        while (true)
        {
            var copy = CopyFile.CreateInMemory();
            if (filling.TryFill(copy))
            {
                return (copy, filling.LeftOut);
            }

            copy.Dispose();
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
        => WholeFile.Write(
            place.Disk, place.Seal, Encoding.UTF8.GetBytes(Seal.Of(scan, place.Copy).Text()), replace: true, like: place.Journal);

    /// <summary>Deletes a query copy that stands beside the one in use.</summary>
    public static void DeleteBeside(LogPlace place)
    {
        place.Disk.Delete(place.NewCopy);
        place.Disk.Delete(place.NewCopyLog);
    }
}
