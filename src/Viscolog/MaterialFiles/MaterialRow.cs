using System.Collections.Immutable;
using Viscolog.Core.Checking;

namespace Viscolog.MaterialFiles;

/// <summary>A material with what the format does not know of it.</summary>
/// <param name="Material">The material.</param>
/// <param name="Unknown">The texts of unknown columns by column; empty ones are left out.</param>
internal sealed record MaterialRow(Material Material, ImmutableSortedDictionary<string, string> Unknown);
