using Viscolog.Store.Copy;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>The full check: every byte of the journal, every record in it, and the query copy against what the journal makes.</summary>
/// <param name="Lines">Lines of the journal.</param>
/// <param name="Runs">Runs in it.</param>
/// <param name="Entries">Rows of runs in it.</param>
/// <param name="Difference">Where the query copy differed, which was then made anew; null where it did not.</param>
internal sealed record LogCheck(long Lines, int Runs, long Entries, string? Difference)
{
    /// <summary>What of the journal can't be applied and is left out, a line each.</summary>
    public IReadOnlyList<string> LeftOut { get; private init; } = [];

    /// <summary>Chars that are shown of a record.</summary>
    private const int Most = 160;

    /// <summary>Checks an open log; the log is closed then.</summary>
    /// <exception cref="LogRefused">The journal is damaged.</exception>
    /// <exception cref="InvalidDataException">A record of the journal can't be understood.</exception>
    public static LogCheck Of(BenchLog log, IProgress<LogProgress>? progress)
    {
        var place = log.Place;
        var scan = log.CloseForCheck();
        try
        {
            var left = CopyBuilder.BuildBeside(place, scan, progress);
            string? difference;
            int runs;
            long rows;
            using (var fresh = CopyFile.Open(place.NewCopy, readOnly: true))
            {
                difference = Compare(fresh, place, progress);
                (runs, rows) = fresh.Counted();
            }

            if (difference is null)
            {
                CopyBuilder.DeleteBeside(place);
                CopyBuilder.SealUp(place, scan);
            }
            else
            {
                CopyBuilder.PutInPlace(place, scan);
            }

            return new(scan.Lines, runs, rows, difference) { LeftOut = left };
        }
        finally
        {
            log.Dispose();
        }
    }

    private static string? Compare(QueryCopy fresh, LogPlace place, IProgress<LogProgress>? progress)
    {
        try
        {
            using var present = CopyFile.Open(place.Copy, readOnly: true);
            using var wanted = fresh.Everything().GetEnumerator();
            var number = 0L;
            foreach (var found in present.Everything())
            {
                if (!wanted.MoveNext() || found.Text != wanted.Current.Text)
                {
                    return $"the query copy held {OneLine.Cut(found.Text, Most)}, which the journal does not";
                }

                if (found.Doses is { } stated && wanted.Current.Doses is { } right && stated != right)
                {
                    return $"the query copy held the doses {OneLine.Cut(stated, Most)} for {OneLine.Cut(found.Text, Most)}";
                }

                if ((++number & 0xfff) == 0)
                {
                    progress?.Report(new("comparing the query copy", number, 0));
                }
            }

            return wanted.MoveNext() ? $"the query copy lacked {OneLine.Cut(wanted.Current.Text, Most)}" : null;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // LiteDB throws exceptions of many types where a file is damaged.
            return OneLine.Of($"the query copy could not be read ({e.Message})");
        }
    }
}
