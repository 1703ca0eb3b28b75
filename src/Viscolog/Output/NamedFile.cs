using System.Security;
using System.Text.RegularExpressions;
using Viscolog.Text;

namespace Viscolog.Output;

/// <summary>
/// Writes what is made to a file that somebody named: whole or not at all, never over another file unasked, and never over a log's own.
/// </summary>
internal static partial class NamedFile
{
    /// <summary>Why no output goes under a name: a log keeps it; null where none does.</summary>
    /// <param name="path">The file.</param>
    public static Refused? Kept(string path) => LogFile().IsMatch(Path.GetFileName(path))
        ? new($"{path}: a log keeps that name for a file of its own; choose another")
        : null;

    [GeneratedRegex(
        @"^readings(-new)?(-log)?\.(db|journal.*|seal|mark|lock|holder|torn.*)$|\.journal$",
        RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture,
        1000)]
    private static partial Regex LogFile();

    /// <summary>Makes the content and writes it.</summary>
    /// <param name="path">As it was typed.</param>
    /// <param name="force">Whether an existing file may be replaced.</param>
    /// <param name="make">Makes the content; called only where the file seems to have a place.</param>
    public static Outcome<string> Write(string path, bool force, Func<byte[]> make)
    {
        var shown = PlainText.Clean(path);
        if (path.Contains('\0', StringComparison.Ordinal))
        {
            return new Refused($"{shown}: cannot be written: the name contains a null character; take it out");
        }

        try
        {
            var full = Path.GetFullPath(path);
            return Obstacle(full, shown) is { } obstacle ? obstacle
                : (force || !Path.Exists(full)) && WholeFile.Write(full, make(), force) ? full : Taken(shown);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or SecurityException or NotSupportedException)
        {
            return new Refused($"{shown}: cannot be written: {PlainText.Clean(e.Message)}");
        }
    }

    /// <summary>Why nothing can be written under a full path, whatever may be replaced; null where something can.</summary>
    public static Refused? Obstacle(string full) => Obstacle(full, PlainText.Clean(full));

    /// <summary>Makes a folder where there is none, in one that is there; why it can't be, or null.</summary>
    public static Refused? FolderMade(string full)
    {
        var shown = PlainText.Clean(full);
        if (File.Exists(full))
        {
            return new($"{shown}: is a file; give the name of a folder");
        }

        if (!Directory.Exists(full) && !Directory.Exists(Path.GetDirectoryName(full)))
        {
            return new($"{shown}: not a folder, and none can be made there; make the folder that it is to stand in first");
        }

        try
        {
            Directory.CreateDirectory(full);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new($"{shown}: cannot be made: {PlainText.Clean(e.Message)}");
        }
    }

    /// <summary>What is wrong before any work is done; the final move decides races.</summary>
    private static Refused? Obstacle(string full, string shown)
    {
        // Windows makes NUL or CON.csv of any folder into a device of its own, outside of all folders.
        var folder = Path.GetDirectoryName(full);
        if (folder is null || full.StartsWith(@"\\.\", StringComparison.Ordinal))
        {
            return new($"{shown}: is the name of a device or a drive, not of a file; choose another");
        }

        if (Kept(full) is { } kept)
        {
            return kept;
        }

        if (!Directory.Exists(folder))
        {
            return new($"{shown}: the folder {PlainText.Clean(folder)} does not exist; make it first or choose another");
        }

        if (Directory.Exists(full))
        {
            return new($"{shown}: is a folder; give the name of a file");
        }

        return Path.Exists(full) && !FileKind.IsRegular(full)
            ? new($"{shown}: is a pipe, a device or a socket, not a file; choose another name") : null;
    }

    private static Refused Taken(string shown) => new($"{shown}: already exists; choose another name, or overwrite it with --force");
}
