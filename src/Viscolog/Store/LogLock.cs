using System.Diagnostics;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>
/// Keeps a log to one program at a time, or to several that only read. The system frees it when a program dies, however it dies.
/// </summary>
internal sealed class LogLock : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    private readonly FileStream _file;
    private readonly string? _holder;

    private LogLock(FileStream file, string? holder)
    {
        (_file, _holder) = (file, holder);
        Leave(WhoWeAre());
    }

    /// <summary>Whether others may read at the same time.</summary>
    public bool IsShared => _holder is null;

    /// <summary>Takes the lock, waiting a while where somebody has it; null where they keep it.</summary>
    /// <param name="place">The log.</param>
    /// <param name="isShared">Whether others may read at the same time.</param>
    /// <param name="patience">How long to wait.</param>
    /// <exception cref="IOException">The lock file can't be used at all.</exception>
    /// <exception cref="UnauthorizedAccessException">The lock file can't be used at all.</exception>
    public static LogLock? Take(LogPlace place, bool isShared, TimeSpan patience)
    {
        var since = Stopwatch.StartNew();
        FileStream? file;
        while ((file = TryOpen(place.Lock, isShared)) is null && since.Elapsed < patience)
        {
            Thread.Sleep(Pause);
        }

        return file is null ? null : new(file, isShared ? null : place.Holder);
    }

    /// <summary>That somebody has the log, and who, as they said themselves.</summary>
    public static string BusyWords(LogPlace place)
    {
        var holder = "";
        try
        {
            holder = File.ReadAllText(place.Holder).Trim();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Nobody said who.
        }

        return $"the log in {place.Folder} is busy: {(holder.Length > 0 ? holder : "another program")} has it; close that first";
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Leave(null);
        _file.Dispose();
    }

    /// <summary>The lock file, open for nobody else or for other readers; null where somebody has it.</summary>
    private static FileStream? TryOpen(string path, bool isShared)
    {
        var share = isShared ? FileShare.Read : FileShare.None;
        try
        {
            if (!File.Exists(path))
            {
                new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite).Dispose();
            }

            // It is only read, so that a log in a folder that can't be written can be locked as well.
            return new(path, FileMode.Open, FileAccess.Read, share);
        }
        catch (IOException) when (File.Exists(path))
        {
            return null;
        }
    }

    private static string WhoWeAre()
    {
        var since = DateTimeOffset.Now.ToString("yyyy-MM-dd HH:mm:ss zzz", System.Globalization.CultureInfo.InvariantCulture);
        return FormattableString.Invariant($"process {Environment.ProcessId} of {Environment.UserName} on {Environment.MachineName}, since {since}");
    }

    private void Leave(string? text)
    {
        if (_holder is null)
        {
            return;
        }

        try
        {
            if (text is null)
            {
                File.Delete(_holder);
            }
            else
            {
                File.WriteAllText(_holder, text + "\n");
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It is only a courtesy to whom the log is busy for.
        }
    }
}
