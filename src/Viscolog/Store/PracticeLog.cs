using Viscolog.Output;
using Viscolog.RunFiles;
using Viscolog.Store.Journal;
using Viscolog.Tables;

namespace Viscolog.Store;

/// <summary>A log of invented runs beside the real one, in a folder of its own, to look around in.</summary>
internal static class PracticeLog
{
    private const string Prefix = "samples/";

    /// <summary>Where it is: a folder beside the real log's.</summary>
    public static string FolderOf(LogPlace real) => real.Folder.TrimEnd(Path.DirectorySeparatorChar) + "-practice";

    /// <summary>Opens it, with the sample runs in it.</summary>
    public static Outcome<BenchLog> Open(LogPlace real, TimeProvider clock)
    {
        var outcome = BenchLog.Open(new(FolderOf(real), real.IsUsual), LogUse.Write, clock, null);
        if (outcome.Made is { } log)
        {
            foreach (var file in Samples())
            {
                log.Import(file, CancellationToken.None);
            }
        }

        return outcome;
    }

    private static IEnumerable<RunFile> Samples()
    {
        var assembly = typeof(PracticeLog).Assembly;
        var names = assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal));
        foreach (var name in names.Order(StringComparer.Ordinal))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            var bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            yield return ((TableOutcome<RunFile>.Read)RunFileReader.Parse(name, bytes)).File;
        }
    }
}
