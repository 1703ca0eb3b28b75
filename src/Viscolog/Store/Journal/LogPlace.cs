using Viscolog.Output;

namespace Viscolog.Store.Journal;

/// <summary>Where a log is: a folder, and the files in it that are ours.</summary>
/// <param name="Folder">The folder's full path.</param>
/// <param name="IsUsual">Whether it is the place that is used when nobody names one; its parents are made with it.</param>
internal sealed record LogPlace(string Folder, bool IsUsual = false)
{
    /// <summary>The variable of the environment that names a log's folder.</summary>
    public const string Variable = "VISCOLOG_LOG";

    /// <summary>Whether there is no log there yet.</summary>
    /// <exception cref="IOException">Nobody can tell.</exception>
    /// <exception cref="UnauthorizedAccessException">Whoever asks may not know.</exception>
    public bool IsAbsent => !IsThere(Folder) || (Directory.Exists(Folder) && !IsThere(Journal));

    /// <summary>Whether there is certainly no log there yet.</summary>
    public bool IsSurelyAbsent
    {
        get
        {
            try
            {
                return IsAbsent;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return false;
            }
        }
    }

    /// <summary>Whether there may be a log that whoever asks can't read, whatever is in it.</summary>
    public bool IsOutOfReach
    {
        get
        {
            try
            {
                if (!IsAbsent && File.Exists(Folder) == Directory.Exists(Journal))
                {
                    File.OpenHandle(Journal, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete).Dispose();
                }

                return new[] { Lock, Copy, Seal }.Any(IsForbidden);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return true;
            }
        }
    }

    /// <summary>The disk it is on.</summary>
    public Disk Disk { get; init; } = Disk.Real;

    /// <summary>The record of truth: every line that was acknowledged.</summary>
    public string Journal => Of("readings.journal");

    /// <summary>The query copy, a LiteDB file made from the journal.</summary>
    public string Copy => Of("readings.db");

    /// <summary>LiteDB's own log beside the query copy; the two belong together.</summary>
    public string CopyLog => Of("readings-log.db");

    /// <summary>A query copy while it is being made.</summary>
    public string NewCopy => Of("readings-new.db");

    /// <summary>LiteDB's own log beside a query copy that is being made.</summary>
    public string NewCopyLog => Of("readings-new-log.db");

    /// <summary>What journal and query copy were when the log was last closed.</summary>
    public string Seal => Of("readings.seal");

    /// <summary>The file that the one program which has the log open keeps locked.</summary>
    public string Lock => Of("readings.lock");

    /// <summary>Who that is.</summary>
    public string Holder => Of("readings.holder");

    /// <summary>How long the journal was when something was last acknowledged.</summary>
    public string Mark => Of("readings.mark");

    /// <summary>
    /// Ends of journal lines that were cut off because they were never written whole; later ones have a number behind the name.
    /// </summary>
    public string Torn => Of("readings.torn");

    /// <summary>All of those that are there.</summary>
    public IEnumerable<string> AllTorn => Directory.Exists(Folder) ? Directory.EnumerateFiles(Folder, "readings.torn*") : [];

    /// <summary>A name for another one, under which nothing stands, not even a link to nowhere.</summary>
    public string NextTorn()
    {
        var path = Torn;
        for (var i = 2; new FileInfo(path) is { Exists: true } or { LinkTarget: not null } || Directory.Exists(path); i++)
        {
            path = Of(FormattableString.Invariant($"readings.torn-{i}"));
        }

        return path;
    }

    /// <summary>Where backups go when nobody names another place.</summary>
    public string Backups => Of("backups");

    /// <summary>The first of the log's own files that is a pipe, a device or a socket; null where none is.</summary>
    public string? Odd => new[] { Journal, Copy, CopyLog, NewCopy, NewCopyLog, Seal, Mark, Lock, Holder }
        .FirstOrDefault(p => File.Exists(p) && !FileKind.IsRegular(p));

    /// <summary>The place that was named, or else the variable's, or else the usual one.</summary>
    public static LogPlace Of(string? named, Func<string, string?> variable)
    {
        if (!string.IsNullOrEmpty(named))
        {
            return new(Path.GetFullPath(named));
        }

        if (variable(Variable) is { Length: > 0 } set)
        {
            return new(Path.GetFullPath(set));
        }

        var data = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        return new(Path.Combine(data, "viscolog"), IsUsual: true);
    }

    /// <summary>Whether something stands under a name, a link to nowhere included.</summary>
    /// <exception cref="IOException">Nobody can tell.</exception>
    /// <exception cref="UnauthorizedAccessException">Whoever asks may not know.</exception>
    public static bool IsThere(string path)
    {
        try
        {
            if (File.GetAttributes(path).HasFlag(FileAttributes.ReparsePoint))
            {
                // Throws where a link leads to itself.
                _ = File.ResolveLinkTarget(path, returnFinalTarget: true);
            }

            return true;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return false;
        }
    }

    private static bool IsForbidden(string path)
    {
        try
        {
            if (File.Exists(path))
            {
                File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete).Dispose();
            }

            return false;
        }
        catch (IOException)
        {
            // Somebody has it.
            return false;
        }
        catch (UnauthorizedAccessException)
        {
            return true;
        }
    }

    private string Of(string name) => Path.Combine(Folder, name);
}
