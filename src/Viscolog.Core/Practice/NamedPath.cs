namespace Viscolog.Core.Practice;

/// <summary>A game that has ended, and the name of who played it.</summary>
/// <param name="Name">As the player gave it.</param>
/// <param name="Path">The game.</param>
public sealed record NamedPath(string Name, PracticePath Path);
