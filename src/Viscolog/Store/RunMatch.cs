using Viscolog.RunFiles;
using Viscolog.Store.Copy;

namespace Viscolog.Store;

/// <summary>Which run of the log a file holds.</summary>
/// <param name="Known">The run in the log; null for a new one.</param>
/// <param name="NewId">The UUID that a new one gets.</param>
internal sealed record RunMatch(LoggedRun? Known, Guid NewId)
{
    /// <summary>Looks a file up: by its UUID, or else by what it says.</summary>
    public static RunMatch Of(RunToImport run, QueryCopy copy)
    {
        var file = run.Header;
        if (file.Id is { } id)
        {
            return new(copy.Run(id), id);
        }

        var alike = copy.RunsByKey(RunIdentity.Key(file))
            .Select(known => (Run: known, Merge: RowMerge.Of(known, run.Whole()))).Where(c => c.Merge.BeginAlike).ToList();
        var known = alike.Find(c => c.Merge.Contradiction is null).Run ?? (file.Run.Name is null ? null : alike.FirstOrDefault().Run);
        return new(known, RunIdentity.Candidates(run).First(id => !copy.Has(id)));
    }
}
