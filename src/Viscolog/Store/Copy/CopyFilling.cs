using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store.Copy;

/// <summary>
/// Fills an empty query copy from a journal. What can't be applied is left out, together with what counts together with it: such a journal
/// was written by an earlier version, and nothing else of it is to be out of reach for that.
/// </summary>
internal sealed class CopyFilling(LogPlace place, JournalScan scan, IProgress<LogProgress>? progress)
{
    private readonly List<(long First, long Last)> _left = [];
    private readonly List<string> _words = [];

    /// <summary>What was left out, a line each.</summary>
    public IReadOnlyList<string> LeftOut => _words;

    /// <summary>
    /// Fills a copy; false where something of a batch was applied before the rest could not be: then with another copy again.
    /// </summary>
    /// <exception cref="InvalidDataException">A record can't be understood.</exception>
    public bool TryFill(QueryCopy copy)
    {
        using var journal = new FileStream(place.Journal, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
        var (line, rows, runs, unit) = (0L, 0L, 0, (First: 0L, Last: 0L));
        foreach (var record in JournalScanner.Records(journal, scan.Length))
        {
            line++;
            unit = record is LogRecord.BatchBegun batch ? (line, line + batch.Lines + 1) : line <= unit.Last ? unit : (line, line);
            if (_left.Exists(l => l.First <= line && line <= l.Last))
            {
                continue;
            }

            if (Misfit(copy, record, line) is { } misfit)
            {
                LeaveOut(unit, line, misfit);
                if (line > unit.First + 1)
                {
                    return false;
                }

                continue;
            }

            rows += record is LogRecord.RowAdded ? 1 : 0;
            runs = record is LogRecord.RunStated stated ? Math.Max(runs, stated.Run) : runs;
            if ((line & 0xfff) == 0)
            {
                progress?.Report(new("making the query copy", line, scan.Lines));
            }
        }

        copy.Flush();
        var counted = copy.Counted();
        return counted == (runs, rows) ? true : throw new IOException(FormattableString.Invariant(
            $"the new query copy holds {counted.Rows} of {rows} rows and {counted.Runs} of {runs} runs"));
    }

    private static string? Misfit(QueryCopy copy, LogRecord record, long line)
    {
        try
        {
            copy.Apply(record);
            return null;
        }
        catch (MisfitException e)
        {
            return e.Message;
        }
        catch (Exception e) when (
            e is FormatException or ArgumentException or InvalidOperationException or OverflowException or NullReferenceException)
        {
            throw new InvalidDataException(
                FormattableString.Invariant($"line {line} holds a record that this program can't read: {OneLine.Of(e.Message)}"), e);
        }
    }

    private void LeaveOut((long First, long Last) unit, long line, string misfit)
    {
        _left.Add(unit);
        var what = unit.First == unit.Last ? "it is left out" : FormattableString.Invariant(
            $"what was logged together with it, lines {unit.First} to {unit.Last}, is left out");
        _words.Add(FormattableString.Invariant($"{place.Journal}, line {line}: can't be applied ({misfit}); {what}, ")
            + "all the rest is there. "
            + "If it came from a file, import that again");
    }
}
