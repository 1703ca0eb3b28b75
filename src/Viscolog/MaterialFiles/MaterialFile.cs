using System.Collections.Immutable;

namespace Viscolog.MaterialFiles;

/// <summary>The materials of a file.</summary>
/// <param name="Rows">Each kind and name once.</param>
/// <param name="Warnings">What the reader ought to know, a line each.</param>
internal sealed record MaterialFile(ImmutableArray<MaterialRow> Rows, ImmutableArray<string> Warnings);
