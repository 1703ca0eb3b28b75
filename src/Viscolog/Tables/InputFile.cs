using Viscolog.Output;

namespace Viscolog.Tables;

/// <summary>A file that somebody named, or a pipe or device in its place: read once, from its beginning to its end or a bound.</summary>
internal static class InputFile
{
    /// <summary>The most bytes that are read of one file: more than a bench logs in its life.</summary>
    public const int Most = 1 << 28;

    /// <summary>What stands for standard input in place of a file's name.</summary>
    public const string StandardInput = "-";

    private const int FirstBlock = 1 << 16;

    /// <summary>How long a pipe may be without anybody who writes to it.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    /// <summary>Reads it; either the bytes or the reason is there.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="kind">What is expected there, such as "a run file".</param>
    /// <param name="stop">Ends the waiting for a pipe or device.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static (ReadOnlyMemory<byte> Bytes, Refusal? Refusal) Read(string path, string kind, CancellationToken stop)
    {
        try
        {
            return path == StandardInput ? Standard(kind, stop)
                : Directory.Exists(path) ? No("a folder", $"{kind}; name one of the files in it")
                : !File.Exists(path) ? No("no such file", $"{kind}; check the path")
                : !(FileKind.IsRegular(path) ? Opened(path) : Waited(path, stop)).Is(out var bytes, out var trouble) ? No(trouble, kind)
                : (bytes, null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return No($"nothing ({e.Message})", "a file that may be read; check its permissions");
        }

        (ReadOnlyMemory<byte> Bytes, Refusal? Refusal) No(string read, string expected)
            => (default, new Refusal(NameOf(path), null, null, read, expected));
    }

    /// <summary>How messages name a file that was named.</summary>
    public static string NameOf(string path) => path == StandardInput ? "standard input" : path;

    private static (ReadOnlyMemory<byte> Bytes, Refusal? Refusal) Standard(string kind, CancellationToken stop)
    {
        using var stream = Console.OpenStandardInput();
        var reading = Task.Run(() => Read(stream, FirstBlock), CancellationToken.None);
        Ended(reading, Timeout.InfiniteTimeSpan, stop);
        return reading.Result.Is(out var bytes, out var trouble)
            ? (bytes, null)
            : (default, new(NameOf(StandardInput), null, null, trouble, kind));
    }

    private static Outcome<byte[]> Opened(string path)
    {
        using var stream = Open(path);
        return Read(stream, (int)Math.Min(stream.Length, Most) + 1);
    }

    /// <summary>
    /// Waits on a thread of its own, since the system's calls can't be stopped: they end with the program where nothing comes.
    /// </summary>
    private static Outcome<byte[]> Waited(string path, CancellationToken stop)
    {
        var opening = Task.Run(() => Open(path), CancellationToken.None);
        if (!Ended(opening, Patience, stop))
        {
            return new Refused(FormattableString.Invariant($"nothing in {Patience.TotalSeconds} s from a pipe that nobody writes to"));
        }

        using var stream = opening.Result;
        var reading = Task.Run(() => Read(stream, FirstBlock), CancellationToken.None);
        Ended(reading, Timeout.InfiniteTimeSpan, stop);
        return reading.Result;
    }

    private static bool Ended(Task task, TimeSpan patience, CancellationToken stop)
    {
        try
        {
            return task.Wait(patience, stop);
        }
        catch (AggregateException e) when (e.InnerException is IOException or UnauthorizedAccessException)
        {
            throw new IOException(e.InnerException.Message, e);
        }
    }

    // A spreadsheet may have it open; Windows would refuse it to who does not allow that.
    private static FileStream Open(string path)
        => new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);

    // The length that a file states is a guess: it may grow, and files of the system state none.
    private static Outcome<byte[]> Read(Stream stream, int guess)
    {
        var bytes = new byte[guess];
        var filled = 0;
        while (true)
        {
            if (stream.Read(bytes, filled, bytes.Length - filled) is > 0 and var read)
            {
                filled += read;
            }
            else
            {
                return bytes[..filled];
            }

            if (filled > Most)
            {
                return new Refused(FormattableString.Invariant($"more than {Most >> 20} MiB"));
            }

            if (filled == bytes.Length)
            {
                Array.Resize(ref bytes, (int)Math.Min(bytes.Length * 2L, Most + 1L));
            }
        }
    }
}
