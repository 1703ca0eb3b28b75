using System.Diagnostics;

namespace Viscolog.Store;

/// <summary>Keeps a log to one program at a time. The system frees it when a program dies, however it dies.</summary>
internal sealed class LogLock : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    private readonly FileStream _file;
    private readonly string _holder;

    private LogLock(FileStream file, LogPlace place)
    {
        (_file, _holder) = (file, place.Holder);
        Leave(WhoWeAre());
    }

    /// <summary>Takes the lock, waiting a while where somebody has it; null where they keep it.</summary>
    /// <exception cref="IOException">The lock file can't be used at all.</exception>
    /// <exception cref="UnauthorizedAccessException">The lock file can't be used at all.</exception>
    public static LogLock? Take(LogPlace place, TimeSpan patience)
    {
        var since = Stopwatch.StartNew();
        while (true)
        {
            if (TryOpen(place.Lock) is { } file)
            {
                return new(file, place);
            }

            if (since.Elapsed >= patience)
            {
                return null;
            }

            Thread.Sleep(Pause);
        }
    }

    /// <summary>Who has the log, as they said themselves.</summary>
    public static string HolderOf(LogPlace place)
    {
        try
        {
            return File.ReadAllText(place.Holder).Trim() is { Length: > 0 } text ? text : "another program";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "another program";
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Leave(null);
        _file.Dispose();
    }

    /// <summary>The lock file, open for nobody else; null where somebody else has it.</summary>
    private static FileStream? TryOpen(string path)
    {
        try
        {
            return new(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException) when (IsHeld(path))
        {
            return null;
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException && File.Exists(path))
        {
            // A folder that can't be written can still be read, and a lock can be had on a file that is only read.
            return new(path, FileMode.Open, FileAccess.Read, FileShare.None);
        }
    }

    private static bool IsHeld(string path)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.None);
            return false;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException or UnauthorizedAccessException)
        {
            return false;
        }
        catch (IOException)
        {
            return true;
        }
    }

    private static string WhoWeAre()
    {
        var since = DateTimeOffset.Now.ToString("yyyy-MM-dd HH:mm:ss zzz", System.Globalization.CultureInfo.InvariantCulture);
        return FormattableString.Invariant($"process {Environment.ProcessId} of {Environment.UserName} on {Environment.MachineName}, since {since}");
    }

    private void Leave(string? text)
    {
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
