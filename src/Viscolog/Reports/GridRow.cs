using System.Collections.Immutable;

namespace Viscolog.Reports;

/// <summary>A row of a table.</summary>
/// <param name="Cells">One for each column.</param>
internal sealed record GridRow(ImmutableArray<string> Cells)
{
    /// <summary>Whether it counts no more and is struck through; its last cell, which says why, is not.</summary>
    public bool IsStruck { get; init; }

    /// <summary>Whether it sums up the rows above it.</summary>
    public bool IsTotal { get; init; }

    public static GridRow Of(params string[] cells) => new([.. cells]);
}
