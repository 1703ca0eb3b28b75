using System.Collections.Immutable;

namespace Viscolog.RunFiles;

/// <summary>One row: the entries of the run that it made, and what stands in its unknown columns.</summary>
/// <param name="FirstEntry">The place of its first entry in the run, from 0.</param>
/// <param name="EntryCount">How many entries it made; 0 where only unknown columns are filled.</param>
/// <param name="Unknown">The texts of the unknown columns, in their order; empty where the file has none.</param>
/// <param name="Replaces">Whether it stands for the void row before it.</param>
internal sealed record RunFileRow(int FirstEntry, int EntryCount, ImmutableArray<string> Unknown, bool Replaces = false);
