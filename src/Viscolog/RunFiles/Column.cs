namespace Viscolog.RunFiles;

/// <summary>A column that the format knows.</summary>
/// <param name="Name">Its name in the header row.</param>
/// <param name="Range">The numbers it takes; null for text.</param>
/// <param name="Show">What a row writes in it; null for an empty cell.</param>
internal sealed record Column(string Name, NumberRange? Range, Func<RowContent, string?> Show);
