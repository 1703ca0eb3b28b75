namespace Viscolog.Store.Journal;

/// <summary>The lines of a damaged journal whose checksums hold, in the order of their numbers.</summary>
internal sealed class SoundLines
{
    private readonly SortedDictionary<long, (long Offset, int Length)> _lines = [];

    private SoundLines(long length) => FileLength = length;

    /// <summary>Bytes of the journal.</summary>
    public long FileLength { get; }

    /// <summary>The greatest number of a sound line; 0 where there is none.</summary>
    public long Last { get; private set; }

    /// <summary>How many there are.</summary>
    public int Count => _lines.Count;

    /// <summary>Looks at every byte.</summary>
    public static SoundLines Of(Stream journal, IProgress<LogProgress>? progress)
    {
        var (sound, cursor) = (new SoundLines(journal.Length), new JournalCursor(journal));
        var before = (Computed: "", Number: (long?)null, Offset: 0L, Length: 0);
        while (cursor.MoveNext())
        {
            var (number, place) = (JournalLine.Number(cursor.Line), (cursor.Offset, cursor.Line.Length));
            if (cursor.IsEnded && JournalLine.Fault(cursor.Chained, cursor.Line) is null)
            {
                sound.Take(number, place);
            }
            else if (cursor.IsEnded && JournalLine.Follows(before.Computed, cursor.Line))
            {
                // Of the line before only its checksum was damaged: this one's reaches back to it as it was.
                sound.Take(before.Number, (before.Offset, before.Length));
                sound.Take(number, place);
            }

            before = (JournalLine.SumOf(cursor.Chained), number, place.Offset, place.Length);
            if ((sound.Count & 0xffff) == 0xffff)
            {
                progress?.Report(new("looking for what is sound", cursor.NextOffset, sound.FileLength));
            }
        }

        return sound;
    }

    /// <summary>What they say, by their numbers; a record that this program can't read is passed over.</summary>
    public IEnumerable<(long Number, long Offset, LogRecord Record)> Records(Stream journal)
    {
        foreach (var (number, (offset, length)) in _lines)
        {
            var line = new byte[length];
            journal.Position = offset;
            journal.ReadExactly(line);
            LogRecord? record = null;
            try
            {
                record = RecordJson.Read(JournalLine.Json(line), number);
            }
            catch (InvalidDataException)
            {
                // It is counted among those that are lost.
            }

            if (record is not null)
            {
                yield return (number, offset, record);
            }
        }
    }

    // A block that was written to the wrong place repeats lines.
    private void Take(long? number, (long Offset, int Length) place)
    {
        if (number is > 0)
        {
            _lines.TryAdd(number.Value, place);
            Last = Math.Max(Last, number.Value);
        }
    }
}
