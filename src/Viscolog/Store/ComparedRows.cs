using System.Collections.Immutable;
using Viscolog.RunFiles;

namespace Viscolog.Store;

/// <summary>The rows of a logged run and of a file, their unknown texts in the same columns so that they compare.</summary>
/// <param name="Columns">The unknown columns of both: the log's, then those that only the file has.</param>
/// <param name="Logged">The log's rows as they compare: a column that the file lacks says nothing.</param>
/// <param name="File">The file's rows.</param>
internal sealed record ComparedRows(ImmutableArray<string> Columns, IReadOnlyList<FileRow> Logged, IReadOnlyList<FileRow> File)
{
    /// <summary>Whether the first rows are the same; a side without rows contradicts nothing.</summary>
    public bool BeginAlike => Logged.Count == 0 || File.Count == 0 || RowMerge.SameButVoid(Logged[0], File[0]);

    public static ComparedRows Of(RunFile logged, RunFile file)
    {
        var columns = logged.UnknownColumns.AddRange(file.UnknownColumns.Where(c => PlaceIn(logged, c) < 0));
        var places = columns.Select(c => PlaceIn(file, c)).ToList();
        return new(
            columns,
            [.. logged.Contents().Select(r => r with { Unknown = [.. r.Unknown.Select((t, i) => places[i] < 0 ? "" : t)] })],
            [.. file.Contents().Select(r => r with { Unknown = [.. places.Select(p => p >= 0 && p < r.Unknown.Length ? r.Unknown[p] : "")] })]);
    }

    private static int PlaceIn(RunFile file, string column) => file.UnknownColumns.IndexOf(column, 0, file.UnknownColumns.Length, StringComparer.OrdinalIgnoreCase);
}
