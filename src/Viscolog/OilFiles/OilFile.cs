using System.Collections.Immutable;

namespace Viscolog.OilFiles;

/// <summary>Readings of certified oils as a file holds them.</summary>
/// <param name="Rows">The readings, in the order read.</param>
/// <param name="Warnings">What the reader ought to know, a line each.</param>
internal sealed record OilFile(ImmutableArray<OilRow> Rows, ImmutableArray<string> Warnings);
