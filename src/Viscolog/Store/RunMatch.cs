using Viscolog.RunFiles;

namespace Viscolog.Store;

/// <summary>Which run of the log a file holds.</summary>
/// <param name="Known">The run in the log; null for a new one.</param>
/// <param name="NewId">The UUID that a new one gets.</param>
/// <param name="Headers">The headers that the known run had, the one in force last.</param>
internal sealed record RunMatch(LoggedRun? Known, Guid NewId, IReadOnlyList<string>? Headers)
{
    /// <summary>Looks a file up: by its UUID, or else by what it says.</summary>
    public static RunMatch Of(RunFile file, BenchLog log)
    {
        if (file.Id is { } id)
        {
            return With(log.Run(id), id, log);
        }

        var candidates = log.RunsByKey(RunIdentity.Key(file)).ToList();
        var fileRows = file.Contents().ToList();
        var known = candidates.Find(c => Begins(c, fileRows) && RowMerge.Of([.. c.File.Contents()], fileRows).Contradiction is null)
            ?? (file.Run.Name is null ? null : candidates.Find(c => Begins(c, fileRows)));
        var first = RunIdentity.Of(file, fileRows.Take(1));
        return With(known, log.Run(first) is null ? first : RunIdentity.Of(file, fileRows), log);
    }

    private static RunMatch With(LoggedRun? known, Guid id, BenchLog log) => new(known, id, known is null ? null : log.Headers(known.Number));

    private static bool Begins(LoggedRun run, List<FileRow> rows)
        => rows.Count == 0 || run.File.Rows.Length == 0 || RowMerge.SameButVoid(run.File.Contents().First(), rows[0]);
}
