using System.Text;
using Viscolog.RunFiles;
using Viscolog.Tables;

namespace Viscolog.Tests.RunFiles;

/// <summary>Run files as text, for tests.</summary>
internal static class FileText
{
    public static TableOutcome<RunFile> Parse(string text) => RunFileReader.Parse("pot.csv", Encoding.UTF8.GetBytes(text));

    public static RunFile Read(string text) => Parse(text) switch
    {
        TableOutcome<RunFile>.Read read => read.File,
        TableOutcome<RunFile>.Refused refused => throw new InvalidOperationException(refused.Refusal.Text),
        _ => throw new InvalidOperationException("a case that the test does not know"),
    };

    public static string Refusal(string text) => Assert.IsType<TableOutcome<RunFile>.Refused>(Parse(text)).Refusal.Text;

    public static byte[] Bytes(RunFile file)
    {
        using var stream = new MemoryStream();
        RunFileWriter.Write(file, stream);
        return stream.ToArray();
    }

    public static string Write(RunFile file) => Encoding.UTF8.GetString(Bytes(file));

    /// <summary>Everything a file holds, as text that compares by value; doubles to their last bit.</summary>
    public static string Whole(RunFile file)
    {
        var run = file.Run;
        var parts = run.Thickeners.Select(t => t.ToString())
            .Concat(run.Entries.Select(e => FormattableString.Invariant($"{e} {e.Time:O}")))
            .Concat(
                file.Rows.Select(
                    r => FormattableString.Invariant($"{r.FirstEntry} {r.EntryCount} {r.Replaces} {string.Join('|', r.Unknown)}")))
            .Concat(file.UnknownKeys.Select(k => k.ToString()))
            .Concat(file.UnknownTraits.Select(t => t.ToString()))
            .Concat(file.UnknownColumns)
            .Append(file.Id?.ToString() ?? "")
            .Append(file.UnusedTolerance.ToString() ?? "")
            .Append((run with { Thickeners = [], Entries = [] }).ToString());
        return string.Join('\n', parts);
    }
}
