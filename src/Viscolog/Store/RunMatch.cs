using Viscolog.RunFiles;
using Viscolog.Store.Copy;

namespace Viscolog.Store;

/// <summary>Which run of the log a file holds. The set of cases is closed.</summary>
internal abstract record RunMatch
{
    private RunMatch()
    {
    }

    /// <summary>Looks a file up: by its UUID, or else by what it says.</summary>
    public static RunMatch Of(RunToImport run, QueryCopy copy)
    {
        var file = run.Header;
        if (file.Id is { } id)
        {
            return copy.Streamed(null, id) is { } same ? new Known(same, RowMerge.Of(same, run)) : new New(id);
        }

        Known? contradicted = null;
        // A run that was renamed here is still the one that this file began.
        List<StreamedRun> alike = [.. copy.RunsByKey(RunIdentity.Key(file))];
        if (copy.Streamed(null, RunIdentity.Candidates(run).First()) is { } begun && alike.TrueForAll(r => r.Id != begun.Id))
        {
            alike.Add(begun);
        }

        foreach (var candidate in alike)
        {
            var merge = RowMerge.OfAlike(candidate, run);
            if (merge is { Contradiction: null })
            {
                return new Known(candidate, merge);
            }

            contradicted ??= merge is null || file.Run.Name is null ? null : new Known(candidate, merge);
        }

        return contradicted ?? (RunMatch)new New(RunIdentity.Candidates(run).First(i => !copy.Has(i)));
    }

    /// <summary>One that the log has.</summary>
    /// <param name="Run">The run.</param>
    /// <param name="Merge">How the two fit together.</param>
    internal sealed record Known(StreamedRun Run, RowMerge Merge) : RunMatch;

    /// <summary>A new one.</summary>
    /// <param name="Id">The UUID that it gets.</param>
    internal sealed record New(Guid Id) : RunMatch;
}
