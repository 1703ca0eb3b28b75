using System.Collections.Immutable;
using Viscolog.RunFiles;

namespace Viscolog.Store;

/// <summary>
/// How two states of one run fit together. Either side may have gone on at its end, made rows void, and put a row in the place of one that it
/// made void; anything else is a contradiction.
/// </summary>
/// <param name="Steps">The rows of both in order.</param>
/// <param name="Contradiction">Where they contradict each other; null where they don't.</param>
internal sealed record RowMerge(ImmutableArray<RowMergeStep> Steps, RowContradiction? Contradiction)
{
    /// <summary>Fits the rows of a file to the rows of the log.</summary>
    public static RowMerge Of(IReadOnlyList<FileRow> logged, IReadOnlyList<FileRow> file)
    {
        var steps = ImmutableArray.CreateBuilder<RowMergeStep>();
        var (i, j) = (0, 0);
        while (i < logged.Count || j < file.Count)
        {
            var step = Next(logged, file, i, j);
            if (step is null)
            {
                return new([], new(i, j));
            }

            steps.Add(step);
            i += step.Logged is null ? 0 : 1;
            j += step.File is null ? 0 : 1;
        }

        return new(steps.ToImmutable(), null);
    }

    /// <summary>Whether both rows say the same, void or not.</summary>
    public static bool SameButVoid(FileRow left, FileRow right)
        => Plain(left) == Plain(right) && Filled(left.Unknown).SequenceEqual(Filled(right.Unknown), StringComparer.Ordinal);

    private static RowMergeStep? Next(IReadOnlyList<FileRow> logged, IReadOnlyList<FileRow> file, int i, int j)
    {
        if (j == file.Count)
        {
            return new(i, null);
        }

        if (i == logged.Count)
        {
            return new(null, j);
        }

        if (SameButVoid(logged[i], file[j]))
        {
            var (there, here) = (logged[i].Void, file[j].Void);
            return there is null || here is null || there == here ? new(i, j) : null;
        }

        // One side may have put a row in the place of a void one; then the other side's row comes up later.
        if (j > 0 && file[j - 1].Void is not null && ComesLater(file, j, logged[i]))
        {
            return new(null, j);
        }

        return i > 0 && logged[i - 1].Void is not null && ComesLater(logged, i, file[j]) ? new(i, null) : null;
    }

    private static bool ComesLater(IReadOnlyList<FileRow> rows, int after, FileRow sought)
    {
        for (var k = after + 1; k < rows.Count; k++)
        {
            if (SameButVoid(rows[k], sought))
            {
                return true;
            }
        }

        return false;
    }

    private static FileRow Plain(FileRow row) => row with { Void = null, Replaces = false, Unknown = [] };

    // The last ones may be missing where they are empty.
    private static ImmutableArray<string> Filled(ImmutableArray<string> unknown)
    {
        var count = unknown.Length;
        while (count > 0 && unknown[count - 1].Length == 0)
        {
            count--;
        }

        return unknown[..count];
    }
}
