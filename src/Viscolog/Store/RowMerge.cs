using System.Collections.Immutable;
using Viscolog.RunFiles;
using Viscolog.Store.Copy;

namespace Viscolog.Store;

/// <summary>
/// How two states of one run fit together. Either side may have gone on at its end, made rows void, and put a row in the place of one
/// that it made void; anything else is a contradiction.
/// </summary>
internal sealed class RowMerge
{
    private readonly List<(int? Logged, int? File)> _steps = [];

    private readonly LoggedRun _known;

    private RowMerge(LoggedRun known, RunFile file)
    {
        _known = known;
        var logged = known.File;
        Columns = logged.UnknownColumns.AddRange(file.UnknownColumns.Where(c => PlaceIn(logged, c) < 0));
        int[] places = [.. Columns.Select(c => PlaceIn(file, c))];
        Logged = [.. logged.Contents().Select(r => r with { Unknown = [.. r.Unknown.Select((t, i) => places[i] < 0 ? "" : t)] })];
        File = [.. file.Contents().Select(r => r with { Unknown = [.. places.Select(p => r.Unknown.ElementAtOrDefault(p) ?? "")] })];
        var (i, j) = (0, 0);
        while (i < Logged.Length || j < File.Length)
        {
            if (Next(i, j) is not { } step)
            {
                Contradiction = (i, j);
                return;
            }

            _steps.Add(step);
            i += step.Logged is null ? 0 : 1;
            j += step.File is null ? 0 : 1;
        }
    }

    /// <summary>The unknown columns of both: the log's, then those that only the file has.</summary>
    public ImmutableArray<string> Columns { get; }

    /// <summary>The log's rows as they compare: an unknown column that the file lacks says nothing.</summary>
    public ImmutableArray<FileRow> Logged { get; }

    /// <summary>The file's rows, their unknown texts in the columns of both.</summary>
    public ImmutableArray<FileRow> File { get; }

    /// <summary>The rows of both in order, by their places on either side from 0; null where a side lacks the row.</summary>
    public IReadOnlyList<(int? Logged, int? File)> Steps => _steps;

    /// <summary>Where they say different things, by the places of both; null where they don't.</summary>
    public (int Logged, int File)? Contradiction { get; }

    /// <summary>Whether the first rows are the same; a side without rows contradicts nothing.</summary>
    public bool BeginAlike => Logged.IsEmpty || File.IsEmpty || SameButVoid(Logged[0], File[0]);

    /// <summary>Fits the rows of a file to the rows of the log.</summary>
    public static RowMerge Of(LoggedRun logged, RunFile file) => new(logged, file);

    /// <summary>Whether a logged row was void for a reason that was lifted since: then what says so is older than the log.</summary>
    public bool WasLifted(int place, string reason)
        => _known.Lifted.TryGetValue(_known.Rows[place], out var reasons) && reasons.Contains(reason);

    private static int PlaceIn(RunFile file, string column)
        => file.UnknownColumns.IndexOf(column, 0, file.UnknownColumns.Length, StringComparer.OrdinalIgnoreCase);

    private (int? Logged, int? File)? Next(int i, int j)
    {
        if (i == Logged.Length || j == File.Length)
        {
            return i == Logged.Length ? (null, j) : (i, null);
        }

        if (SameButVoid(Logged[i], File[j]))
        {
            var (there, here) = (Logged[i].Void, File[j].Void);
            return there is null || here is null || there == here || WasLifted(i, here) ? (i, j) : null;
        }

        // One side may have put a row in the place of a void one; then the other side's row comes up later.
        if (IsReplaced(File, j, Logged[i]))
        {
            return (null, j);
        }

        return IsReplaced(Logged, i, File[j]) ? (i, null) : null;
    }

    private static bool IsReplaced(ImmutableArray<FileRow> rows, int place, FileRow other)
        => place > 0 && rows[place - 1].Void is not null && rows.Skip(place + 1).Any(r => SameButVoid(r, other));

    private static bool SameButVoid(FileRow left, FileRow right)
        => Plain(left) == Plain(right) && Filled(left.Unknown).SequenceEqual(Filled(right.Unknown), StringComparer.Ordinal);

    private static FileRow Plain(FileRow row) => row with { Void = null, Replaces = false, Unknown = [] };

    // The last ones may be missing where they are empty.
    private static IEnumerable<string> Filled(ImmutableArray<string> unknown)
        => unknown.Take(1 + unknown.AsSpan().LastIndexOfAnyExcept(""));
}
