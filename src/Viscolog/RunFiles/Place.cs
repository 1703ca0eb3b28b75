namespace Viscolog.RunFiles;

/// <summary>Where a text stands in a file, and how a refusal shows it.</summary>
internal readonly record struct Place(int? Line, string? Column, string Read);
