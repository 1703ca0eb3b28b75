using System.Collections.Immutable;
using Viscolog.Core.Measuring;

namespace Viscolog.OilFiles;

/// <summary>A certified oil read by a method, with the cells that say so.</summary>
/// <param name="Reading">What they say.</param>
/// <param name="Cells">The cells of its row in an oils file, by column, those of unknown columns too; without <c>void</c>.</param>
internal sealed record OilRow(OilReading Reading, ImmutableSortedDictionary<string, string> Cells)
{
    /// <summary>Why it counts no more; null while it counts.</summary>
    public string? Void { get; init; }

    /// <summary>The cells as one text: rows that say the same have the same.</summary>
    public string Key => string.Join('\u001f', Cells.Select(c => $"{c.Key}\u001e{c.Value}"));
}
