namespace Viscolog.Store;

/// <summary>Where two states of a run say different things.</summary>
/// <param name="Logged">The place among the log's rows, from 0.</param>
/// <param name="File">The place among the file's rows, from 0.</param>
internal sealed record RowContradiction(int Logged, int File);
