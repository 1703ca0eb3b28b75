using System.Collections.Immutable;

namespace Viscolog.Store;

/// <summary>What a list of runs says of one.</summary>
/// <param name="Number">Its number in this log.</param>
/// <param name="Id">Its UUID.</param>
/// <param name="Name">Its name; null where it has none.</param>
/// <param name="Base">Its base; null where it names none.</param>
/// <param name="Lot">Its lot; null where it names none.</param>
/// <param name="Thickeners">Its thickeners.</param>
/// <param name="Entries">Its rows, void ones included.</param>
/// <param name="Voided">Rows that are void.</param>
/// <param name="Readings">Rows with a reading that count.</param>
/// <param name="Last">When the last thing happened to it or was logged.</param>
internal sealed record RunSummary(int Number, Guid Id, string? Name, string? Base, string? Lot, ImmutableArray<string> Thickeners, int Entries, int Voided, int Readings, DateTimeOffset Last)
{
    /// <summary>The product that it says it is a batch of; null where it says none.</summary>
    public string? Product { get; init; }
}
