using System.Text;
using Viscolog.Store.Journal;

namespace Viscolog.Sharing;

/// <summary>The lines of a journal that were acknowledged, read beside whoever adds to it.</summary>
/// <param name="place">The log.</param>
internal sealed class OwnLines(LogPlace place)
{
    // Where a line begins that was looked at last.
    private (long Number, long Offset) _known = (1, 0);

    /// <summary>The bytes that were acknowledged: those that the mark or the seal vouches for.</summary>
    public long Acknowledged()
    {
        var length = new FileInfo(place.Journal).Length;
        var sealedLength = Store.Copy.Seal.Read(place.Seal)?.JournalLength ?? 0;
        return Math.Max(sealedLength <= length ? sealedLength : 0, JournalMark.Read(place.Mark, length));
    }

    /// <summary>The last line in so many bytes.</summary>
    public (long Number, string Text) Last(long length) => From(_known.Number, length).Last();

    /// <summary>The lines from a number on, up to so many bytes of the journal.</summary>
    public IEnumerable<(long Number, string Text)> From(long number, long length)
    {
        var (at, offset) = number >= _known.Number && _known.Offset <= length ? _known : (1, 0);
        using var journal = new FileStream(place.Journal, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1);
        journal.Position = offset;
        var cursor = new JournalCursor(journal);
        for (; offset + cursor.NextOffset < length && cursor.MoveNext(); at++)
        {
            if (at < number)
            {
                continue;
            }

            _known = (at, offset + cursor.Offset);
            yield return (at, Encoding.UTF8.GetString(cursor.Line));
        }
    }
}
