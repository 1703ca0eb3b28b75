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
    private readonly string _games = Path.Combine(folder, "games");

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

    /// <summary>All games in the order in which they ended, and what to say of files that can't be read.</summary>
    public (ImmutableArray<PracticeResult> Results, ImmutableArray<string> Warnings) All()
    {
        var (results, warnings) = (ImmutableArray.CreateBuilder<PracticeResult>(), ImmutableArray.CreateBuilder<string>());
        foreach (var path in (string[])(Directory.Exists(_games) ? Directory.GetFiles(_games, "*.json") : []))
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
}
