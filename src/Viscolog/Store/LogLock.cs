using System.Diagnostics;
using Viscolog.Output;
using Viscolog.Store.Journal;

namespace Viscolog.Store;

/// <summary>
/// Gives a log to one program at a time, or to several that only read. The system releases it when a program ends, however it ends.
/// </summary>
internal sealed class LogLock : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    private readonly FileStream _file;
    private readonly string? _holder;

    private LogLock(FileStream file, string? holder)
    {
        (_file, _holder) = (file, holder);
        Leave(path =>
        {
            // A link in its place is taken away, never followed.
            File.Delete(path);
            using var name = new StreamWriter(new FileStream(path, FileMode.CreateNew, FileAccess.Write));
            name.Write(WhoWeAre());
        });
    }

    /// <summary>Whether others may read at the same time.</summary>
    public bool IsShared => _holder is null;

    /// <summary>Takes the lock, waiting while another program has it; null when the patience is over.</summary>
    /// <param name="place">The log.</param>
    /// <param name="isShared">Whether others may read at the same time.</param>
    /// <param name="patience">How long to wait.</param>
    /// <param name="progress">Is told for whom; may be null.</param>
    /// <exception cref="IOException">The lock file can't be used at all.</exception>
    /// <exception cref="UnauthorizedAccessException">The lock file can't be used at all.</exception>
    /// <exception cref="LogRefused">It is a link, which is never followed.</exception>
    public static LogLock? Take(LogPlace place, bool isShared, LogPatience patience, IProgress<LogProgress>? progress = null)
    {
        if (new FileInfo(place.Lock).LinkTarget is not null)
        {
            throw new LogRefused($"{place.Lock} is a link, not a file of a log; nothing was changed. Move it away");
        }

        var since = Stopwatch.StartNew();
        FileStream? file;
        while ((file = TryOpen(place.Lock, isShared)) is null && since.Elapsed < patience.Time && !patience.Stop.IsCancellationRequested)
        {
            progress?.Report(new($"waiting for {(HolderOf(place) is { Length: > 0 } holder ? holder : "another program")}", 0, 0));
            Thread.Sleep(Pause);
        }

        return file is null ? null : new(file, isShared ? null : place.Holder);
    }

    /// <summary>Says that the log is busy and who has it, by the name that its holder left.</summary>
    public static string BusyWords(LogPlace place) => BusyWords(place, HolderOf(place));

    /// <summary>Who has the log, by the name that its holder left; empty where there is none.</summary>
    public static string HolderOf(LogPlace place)
    {
        try
        {
            return new FileInfo(place.Holder).LinkTarget is null && FileKind.IsRegular(place.Holder)
                ? File.ReadAllText(place.Holder).Trim()
                : "";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    /// <summary>The same for a holder whose name was read before.</summary>
    public static string BusyWords(LogPlace place, string holder)
    {
        return $"the log in {place.Folder} is busy: {(holder.Length > 0 ? holder : "another program")} has it open; close that first";
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Leave(File.Delete);
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
        var who = FormattableString.Invariant($"process {Environment.ProcessId} of {Environment.UserName} on {Environment.MachineName}");
        return FormattableString.Invariant($"{who}, since {DateTimeOffset.Now:yyyy-MM-dd HH:mm:ss zzz}\n");
    }

    private void Leave(Action<string> change)
    {
        try
        {
            if (_holder is not null)
            {
                change(_holder);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The name only helps whoever finds the log busy.
        }
    }
}

/// <summary>How long to wait for another program that has a log.</summary>
/// <param name="Time">So long at most.</param>
/// <param name="Stop">Ends the waiting.</param>
internal readonly record struct LogPatience(TimeSpan Time, CancellationToken Stop)
{
    /// <summary>Two seconds: somebody waits for an answer.</summary>
    public static LogPatience Short { get; } = new(TimeSpan.FromSeconds(2), CancellationToken.None);

    /// <summary>Half a minute: other imports end by themselves.</summary>
    public static LogPatience Long(CancellationToken stop) => new(TimeSpan.FromSeconds(30), stop);
}
