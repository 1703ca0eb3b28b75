using System.Collections.Immutable;
using Viscolog.RunFiles;

namespace Viscolog.Store;

/// <summary>A run as the log holds it.</summary>
/// <param name="Number">Its number in this log.</param>
/// <param name="File">The run as a file, with its UUID.</param>
/// <param name="Rows">The numbers of the file's rows.</param>
internal sealed record LoggedRun(int Number, RunFile File, ImmutableArray<int> Rows);
