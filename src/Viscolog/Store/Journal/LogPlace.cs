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
    public bool IsAbsent => !File.Exists(Folder) && !Path.Exists(Journal);

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

    /// <summary>Ends of journal lines that were cut off because they were never written whole.</summary>
    public string Torn => Of("readings.torn");

    /// <summary>Where backups go when nobody names another place.</summary>
    public string Backups => Of("backups");

    /// <summary>The first of the log's own files that is a pipe, a device or a socket; null where none is.</summary>
    public string? Odd => new[] { Journal, Copy, CopyLog, NewCopy, NewCopyLog, Seal, Lock, Holder }
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

    private string Of(string name) => Path.Combine(Folder, name);
}
