namespace Viscolog.Store;

/// <summary>One row of a merged run.</summary>
/// <param name="Logged">Its place among the log's rows, from 0; null where the log lacks it.</param>
/// <param name="File">Its place among the file's rows, from 0; null where the file lacks it.</param>
internal sealed record RowMergeStep(int? Logged, int? File);
