using System.Diagnostics;
using Viscolog.Output;

namespace Viscolog.Store.Journal;

/// <summary>
/// The journal's own lock: one writer, or several readers. It holds where the lock file beside it was removed by hand.
/// </summary>
internal sealed class JournalClaim : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(20);

    private JournalClaim(FileStream file) => File = file;

    /// <summary>The journal, open as it was claimed.</summary>
    public FileStream File { get; }

    /// <summary>Takes it, waiting while another program has it; null when the patience is over.</summary>
    /// <exception cref="IOException">The journal can't be opened.</exception>
    /// <exception cref="UnauthorizedAccessException">The journal may not be opened.</exception>
    public static JournalClaim? Take(Disk disk, string journal, bool isShared, TimeSpan patience)
    {
        var since = Stopwatch.StartNew();
        while (true)
        {
            var file = isShared
                ? new FileStream(journal, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, bufferSize: 0)
                : new FileStream(journal, FileMode.Open, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0);
            if (disk.Claim(file, isShared))
            {
                return new(file);
            }

            file.Dispose();
            if (since.Elapsed >= patience)
            {
                return null;
            }

            Thread.Sleep(Pause);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => File.Dispose();
}
