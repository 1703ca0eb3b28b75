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

        var alike = log.RunsByKey(RunIdentity.Key(file)).Select(run => (Run: run, Rows: ComparedRows.Of(run.File, file))).Where(c => c.Rows.BeginAlike).ToList();
        var known = alike.Find(c => RowMerge.Of(c.Rows.Logged, c.Rows.File).Contradiction is null).Run ?? (file.Run.Name is null ? null : alike.FirstOrDefault().Run);
        var first = RunIdentity.Of(file, file.Contents().Take(1));
        return With(known, log.Run(first) is null ? first : RunIdentity.Of(file, file.Contents()), log);
    }

    private static RunMatch With(LoggedRun? known, Guid id, BenchLog log) => new(known, id, known is null ? null : log.Headers(known.Number));
}
