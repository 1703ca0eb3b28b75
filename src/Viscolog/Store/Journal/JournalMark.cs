using System.Globalization;
using System.IO.Hashing;
using System.Text;
using Viscolog.Output;

namespace Viscolog.Store.Journal;

/// <summary>
/// How long the journal was when something was last acknowledged, beside it while a log is open. It is written after the journal was
/// flushed and never flushed itself, so it may say too little and never too much: what it vouches for was not torn, it is damaged where it
/// is bad.
/// </summary>
internal sealed class JournalMark(string path, string journal) : IDisposable
{
    private FileStream? _file;

    /// <summary>
    /// The bytes that it vouches for; 0 where there is no mark, or where the journal is shorter: then it speaks of another one.
    /// </summary>
    public static long Read(string path, long journalLength)
    {
        try
        {
            var text = File.Exists(path) ? File.ReadAllText(path) : "";
            return text.Split(' ', '\n') is ["viscolog-mark", "1", var digits, _, ""]
                && Number(digits) is { } length
                && Text(length) == text
                && length <= journalLength
                ? length
                : 0;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return 0;
        }
    }

    /// <summary>
    /// Says that so many bytes are acknowledged. A mark that can't be written is none; nothing depends on it but an earlier warning.
    /// </summary>
    public void Set(long length)
    {
        try
        {
            if (_file is null && new FileInfo(path).LinkTarget is null)
            {
                if (!File.Exists(path))
                {
                    Disk.New(path, Disk.ModeOf(journal)).Dispose();
                }

                _file = new(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
            }

            if (_file is not null)
            {
                RandomAccess.Write(_file.SafeFileHandle, Encoding.ASCII.GetBytes(Text(length)), 0);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // As said.
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _file?.Dispose();

    private static long? Number(string digits)
        => long.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    // Always of one length, so that a new one covers the old.
    private static string Text(long length)
    {
        var body = FormattableString.Invariant($"viscolog-mark 1 {length:D19} ");
        return FormattableString.Invariant($"{body}{Crc32.HashToUInt32(Encoding.ASCII.GetBytes(body)):x8}\n");
    }
}
