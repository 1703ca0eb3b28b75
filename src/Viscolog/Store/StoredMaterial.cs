namespace Viscolog.Store;

/// <summary>A material as the journal and the query copy hold it: the cells of its row in a materials file, by column.</summary>
/// <param name="Kind">base, thickener, method or specification.</param>
/// <param name="Name">Its name, once for each kind.</param>
/// <param name="Cells">The other cells that hold something.</param>
internal sealed record StoredMaterial(string Kind, string Name, SortedDictionary<string, string> Cells);
