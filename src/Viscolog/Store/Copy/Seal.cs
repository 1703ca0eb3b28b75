using System.Globalization;
using System.IO.Hashing;
using System.Text;
using Viscolog.Store.Journal;

namespace Viscolog.Store.Copy;

/// <summary>
/// What journal and query copy were when the log was last closed. While both are still the same, to the last bit, nothing needs to be
/// compared; a seal that is missing, damaged or does not fit only costs the work of making the query copy anew.
/// </summary>
/// <param name="JournalLength">Bytes of the journal.</param>
/// <param name="JournalSum">The checksum of its last line.</param>
/// <param name="CopyLength">Bytes of the query copy.</param>
/// <param name="CopySum">Its XXH128.</param>
internal sealed record Seal(long JournalLength, string JournalSum, long CopyLength, string CopySum)
{
    private string Body
        => FormattableString.Invariant($"viscolog-seal 1\njournal {JournalLength} {JournalSum}\ncopy {CopyLength} {CopySum}\n");

    /// <summary>The seal of a folder; null where there is none that can be trusted.</summary>
    public static Seal? Read(string path)
    {
        try
        {
            var text = File.Exists(path) ? File.ReadAllText(path) : "";
            return text.Split('\n', ' ') is ["viscolog-seal", "1", "journal", var journal, var sum, "copy", var copy, var copySum, ..]
                && Length(journal) is { } journalLength && Length(copy) is { } copyLength
                && new Seal(journalLength, sum, copyLength, copySum) is var seal && seal.Text() == text
                    ? seal
                    : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>The seal of what stands in the files now.</summary>
    public static Seal Of(JournalScan journal, string copyPath)
    {
        var (length, sum) = SumOf(copyPath);
        return new(journal.Length, journal.LastSum, length, sum);
    }

    /// <summary>Length and XXH128 of a query copy.</summary>
    public static (long Length, string Sum) SumOf(string copyPath)
    {
        using var stream = new FileStream(copyPath, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0);
        var hash = new XxHash128();
        hash.Append(stream);
        return (stream.Length, Convert.ToHexStringLower(hash.GetCurrentHash()));
    }

    /// <summary>Its text, with a checksum of its own.</summary>
    public string Text() => FormattableString.Invariant($"{Body}sum {Crc32.HashToUInt32(Encoding.UTF8.GetBytes(Body)):x8}\n");

    private static long? Length(string text)
        => long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var length) ? length : null;
}
