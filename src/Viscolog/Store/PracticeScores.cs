using System.Collections.Immutable;
using System.Text.Json;
using Viscolog.Output;
using Viscolog.PracticeFiles;
using Viscolog.Store.Journal;
using Viscolog.Text;

namespace Viscolog.Store;

/// <summary>
/// The games that a class has played, each a file of its own that is written once and whole; beside the real log, in the folder of the
/// practice log, never in it.
/// </summary>
/// <param name="folder">The practice log's folder.</param>
internal sealed class PracticeScores(string folder)
{
    /// <summary>The longest game that another bench may send, in characters.</summary>
    private const int LongestShared = 65_536;

    private readonly string _games = Path.Combine(folder, "games");

    // What other benches have played, where the log is shared.
    private readonly string _shared = Path.Combine(folder, "games-shared");

    /// <summary>Those that belong to a real log.</summary>
    public static PracticeScores Beside(LogPlace real) => new(PracticeLog.FolderOf(real));

    /// <summary>Keeps a game; null when it is on the disk, else why it is not.</summary>
    public string? Save(PracticeResult result)
    {
        try
        {
            if (Path.GetDirectoryName(folder) is not { } parent || !Directory.Exists(parent))
            {
                return $"{folder}: the folder above it does not exist; make it first or choose another log";
            }

            Disk.Real.MakeFolder(_games);
            var name = FormattableString.Invariant($"{result.Ended.UtcDateTime:yyyyMMdd-HHmmss}-{Guid.NewGuid():N}.json");
            var json = JsonSerializer.SerializeToUtf8Bytes(result, PracticeJson.Relaxed.PracticeResult);
            WholeFile.Write(Path.Combine(_games, name), json, replace: false);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return OneLine.Of($"the score can't be kept: {e.Message}");
        }
    }

    /// <summary>The games of this bench, as their files have them, but for those that are known elsewhere.</summary>
    public IEnumerable<(Guid Id, string Result)> Own(IReadOnlySet<Guid> known)
    {
        foreach (var path in (string[])(Directory.Exists(_games) ? Directory.GetFiles(_games, "*.json") : []))
        {
            if (IdOf(path) is { } id && !known.Contains(id) && FileKind.IsRegular(path) && new FileInfo(path).Length <= LongestShared)
            {
                yield return (id, File.ReadAllText(path));
            }
        }
    }

    /// <summary>The games of other benches that are here.</summary>
    public IEnumerable<Guid> Shared()
        => ((string[])(Directory.Exists(_shared) ? Directory.GetFiles(_shared, "*.json") : [])).Select(IdOf).OfType<Guid>();

    /// <summary>Keeps a game of another bench; what it says is looked at when scores are shown.</summary>
    /// <exception cref="IOException">It can't be kept.</exception>
    public void Keep(Guid id, string result)
    {
        if (result.Length <= LongestShared)
        {
            Disk.Real.MakeFolder(_shared);
            WholeFile.Write(Path.Combine(_shared, $"{id:N}.json"), System.Text.Encoding.UTF8.GetBytes(result), replace: true);
        }
    }

    /// <summary>Throws the games of other benches away.</summary>
    /// <exception cref="IOException">They can't be deleted.</exception>
    public void ForgetShared()
    {
        if (Directory.Exists(_shared))
        {
            Directory.Delete(_shared, recursive: true);
        }
    }

    /// <summary>
    /// All games in the order in which they ended, those of other benches with them, and what to say of files that can't be read.
    /// </summary>
    public (ImmutableArray<PracticeResult> Results, ImmutableArray<string> Warnings) All()
    {
        var (results, warnings) = (ImmutableArray.CreateBuilder<PracticeResult>(), ImmutableArray.CreateBuilder<string>());
        foreach (var path in new[] { _games, _shared }.Where(Directory.Exists).SelectMany(f => Directory.GetFiles(f, "*.json")))
        {
            try
            {
                if (!FileKind.IsRegular(path))
                {
                    warnings.Add($"{path}: left out; it is a pipe, a device or a socket");
                    continue;
                }

                var result = JsonSerializer.Deserialize(File.ReadAllBytes(path), PracticeJson.Relaxed.PracticeResult);
                if (result is { Schema: PracticeResult.Version, IsFinite: true })
                {
                    results.Add(result);
                    continue;
                }

                warnings.Add($"{path}: left out; it is not a game of the kind {PracticeResult.Version}");
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
            {
                warnings.Add(OneLine.Of($"{path}: left out; it can't be read: {e.Message}"));
            }
        }

        return ([.. results.OrderBy(r => r.Ended)], warnings.ToImmutable());
    }

    /// <summary>The identity at the end of a file's name; null where there is none.</summary>
    private static Guid? IdOf(string path)
        => Path.GetFileNameWithoutExtension(path) is { Length: >= 32 } name && Guid.TryParseExact(name[^32..], "N", out var id) ? id : null;
}
